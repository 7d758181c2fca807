using System.Globalization;
using Underturf.Property.Practice;
using Underturf.Simulation;

namespace Underturf.Benchmarks;

/// <summary>Whether what is believed of the water holds as often as it says, on water that the model did not make.</summary>
internal static class WaterCalibration
{
    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        var (count, first) = (arguments.Whole(1) ?? 300, (ulong)(arguments.Whole(2) ?? (int)WaterStudy.FirstSeed));
        var cases = WaterStudy.Block(first, count, PracticeBook.Default, arguments.Whole(3) ?? 1);
        output.WriteLine("Stations:\n\n" + WaterStudy.Heading);
        output.WriteLine(WaterStudy.Row(cases, c => c.Stations));
        Interval(output, cases, c => c.Stations, first);
        output.WriteLine("\nSupply:\n\n" + WaterStudy.Heading);
        output.WriteLine(WaterStudy.Row(cases, c => [c.Supply]));
        Interval(output, cases, c => [c.Supply], first);
        output.WriteLine("\nEverything off:\n\n" + WaterStudy.IdleHeading);
        output.WriteLine(WaterStudy.IdleRow(cases));
        var runs = cases.Where(c => c.Runs).ToList();
        var (low, high) = Bootstrap.Interval(runs, c => WaterStudy.TopRight(c.Select(x => x.End!)), first);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"\nThe true source on top at the end: 95 % interval {100 * low:0.0} to {100 * high:0.0} %. Nothing runs in {cases.Count - runs.Count}; said to run all the same: {cases.Count(c => !c.Runs && c.SaidToRun)}."));
        output.WriteLine();
        Faults(output, cases);
        IReadOnlyList<WaterStudy.Case> few = [.. cases.Take(WaterStudy.Few)];
        output.WriteLine($"\nThe first {few.Count}, which a test makes again: stations, supply; and the first in which something runs.\n");
        output.WriteLine(WaterStudy.Heading + "\n" + WaterStudy.Row(few, c => c.Stations) + "\n" + WaterStudy.Row(few, c => [c.Supply]) + "\n\n" + WaterStudy.IdleHeading + "\n" + WaterStudy.IdleRow(WaterStudy.Running(first, WaterStudy.FewRunning, PracticeBook.Default)));
        return 0;
    }

    private static void Interval(TextWriter output, IReadOnlyList<WaterStudy.Case> cases, Func<WaterStudy.Case, IEnumerable<WaterStudy.Stated>> of, ulong seed)
    {
        var (low, high) = Bootstrap.Interval(cases, c => WaterStudy.TopRight(c.SelectMany(of)), seed);
        var (worse, better) = Bootstrap.Interval(cases, c => WaterStudy.LogScore(c.SelectMany(of), s => s.Truth) - WaterStudy.LogScore(c.SelectMany(of), s => s.TruthByRates), seed);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"\n95 % intervals, properties drawn anew: right {100 * low:0.0} to {100 * high:0.0} %, log score beside rates {worse:+0.000;-0.000} to {better:+0.000;-0.000}."));
    }

    private static void Faults(TextWriter output, IReadOnlyList<WaterStudy.Case> cases)
    {
        output.WriteLine("| fault of a station | asked | there | expected |\n|---|---|---|---|");
        foreach (var fault in cases.SelectMany(c => c.Faults).GroupBy(f => f.Fault).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {fault.Key} | {fault.Count()} | {fault.Count(f => f.There)} | {fault.Sum(f => f.Chance):0.0} |"));
        }
    }
}
