using Underturf.Property.Practice;
using Underturf.Simulation;

namespace Underturf.Tests.Simulation;

public sealed class WaterStudyTests
{
    [Fact]
    public void A_small_rerun_gives_the_rows_of_the_report()
    {
        var (cases, report) = (WaterStudy.Block(WaterStudy.FirstSeed, WaterStudy.Few, PracticeBook.Default), Repository.Read("docs/reports/water.md"));
        Assert.Contains(WaterStudy.Row(cases, c => c.Stations), report, StringComparison.Ordinal);
        Assert.Contains(WaterStudy.Row(cases, c => [c.Supply]), report, StringComparison.Ordinal);
        Assert.Contains(WaterStudy.IdleRow(WaterStudy.Running(WaterStudy.FirstSeed, WaterStudy.FewRunning, PracticeBook.Default)), report, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_seed_makes_the_same_water_and_the_same_notes() =>
        Assert.Equal(new WaterTrial(7, PracticeBook.Default).Log.ToBytes().ToArray(), new WaterTrial(7, PracticeBook.Default).Log.ToBytes().ToArray());

    [Fact]
    public void What_leaks_elsewhere_leaks_less_while_a_station_draws_the_pressure_down()
    {
        var truth = Enumerable.Range(1, 500).Select(seed => WaterTrial.TruthOf((ulong)seed, PracticeBook.Default)).First(t => t.MainHole > 0 && t.Creep == 0 && t.Stations.All(s => s.LeakHole == 0));
        var station = truth.Stations.First(s => s.Coefficient > 0);
        var (idle, alone, both) = (Flow(truth, null), Flow(truth with { MainHole = 0 }, station), Flow(truth, station));
        Assert.True(both < idle + alone);
        Assert.True(both > alone);
    }

    private static double Flow(TrueWater truth, TrueStation? running) => truth.Solve(running, new HashSet<string>()).Meter;
}
