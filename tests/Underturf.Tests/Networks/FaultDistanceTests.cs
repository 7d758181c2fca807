using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.FaultDistance;
using Underturf.Quantities;

namespace Underturf.Tests.Networks;

/// <summary>Distances to a fault on an invented run, and what is refused.</summary>
public sealed class FaultDistanceTests
{
    [Fact]
    public void A_run_that_changes_gauge_half_way_is_walked_stretch_by_stretch()
    {
        // Exact: a short at 100 m, that is 30 m into the second stretch, read from both ends.
        var ohms = SampledRuns.Run.Stretches.Select(s => Each(s, s.Size) + Each(s, s.ReturnSize)).ToArray();
        var near = (70 * ohms[0]) + (30 * ohms[1]);
        var far = (20 * ohms[1]) + (90 * ohms[2]);
        var reading = new TwoEndOhms { Path = FaultPath.BetweenPair, Near = new(near + 2, 0), Far = new(far + 2, 0) };

        Assert.Equal(100, reading.Locate(SampledRuns.Run).Value.Metres, 1e-9);
    }

    [Fact]
    public void A_shared_temperature_cancels_in_a_bridge_without_contacts_and_does_not_with_a_loop_read()
    {
        var murray = new MurrayLoop { ReturnArm = new(2, 0), FaultyArm = new(1, 0) };
        var computed = murray.Locate(SampledRuns.Run).Value;
        var read = (murray with { Loop = new(5, 0) }).Locate(SampledRuns.Run).Value;

        Assert.DoesNotContain(computed.Sources, s => s.Name.Contains("temperature", StringComparison.Ordinal) && s.SpreadMetres > 0.01);
        Assert.Contains(read.Sources, s => s.Name.Contains("temperature", StringComparison.Ordinal) && s.SpreadMetres > 0.5);
    }

    [Fact]
    public void What_all_capacitances_share_cancels_in_their_ratio()
    {
        var ratio = new CapacitanceRatio { Near = new(2e-9, 0), Far = new(3e-9, 0) }.Locate(SampledRuns.Run).Value;
        var metre = new CapacitancePerMetre { Near = new(4e-9, 0) }.Locate(SampledRuns.Run).Value;

        Assert.DoesNotContain(ratio.Sources, s => s.Name == "capacitance a metre" && s.SpreadMetres > 1e-9);
        Assert.Equal("capacitance a metre", metre.Sources[0].Name);
    }

    [Fact]
    public void A_place_outside_the_run_is_refused_unless_its_spread_explains_it()
    {
        // Exact: the run holds 14.28 nF, and its last stretch 71 pF a metre.
        var reading = new CapacitancePerMetre { Near = new(15.5e-9, 0) };
        var sharp = SampledRuns.Run with { CapacitanceSpreadShare = 0, Stretches = [.. SampledRuns.Run.Stretches.Select(s => s with { LengthSpreadShare = 0 })] };

        Assert.Contains("beyond the far end", reading.Locate(sharp).Problem!.Reason, StringComparison.Ordinal);
        Assert.Equal(210 + (1.22 / 0.071), reading.Locate(SampledRuns.Run).Value.Metres, 1e-9);
        Assert.Contains(
            "before the near end",
            new TwoEndOhms { Path = FaultPath.ToEarth, Near = new(100, 0), Far = new(150, 0) }.Locate(SampledRuns.Run).Problem!.Reason,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_far_end_left_on_its_coil_is_refused_by_every_method()
    {
        var problems = new[]
        {
            new MurrayLoop { ReturnArm = new(2, 0), FaultyArm = new(1, 0), FarEnd = FarEnd.Loaded }.Locate(SampledRuns.Run).Problem,
            new VarleyLoop { ReturnArm = new(2, 0), FaultyArm = new(1, 0), AtEarth = new(1, 0), FarEnd = FarEnd.Loaded }.Locate(SampledRuns.Run).Problem,
            new TwoEndOhms { Path = FaultPath.ToEarth, Near = new(9, 0), Far = new(9, 0), FarEnd = FarEnd.Loaded }.Locate(SampledRuns.Run).Problem,
            new CapacitanceRatio { Near = new(1e-9, 0), Far = new(1e-9, 0), FarEnd = FarEnd.Loaded }.Locate(SampledRuns.Run).Problem,
            new CapacitancePerMetre { Near = new(1e-9, 0), FarEnd = FarEnd.Loaded }.Locate(SampledRuns.Run).Problem,
        };

        Assert.All(problems, p => Assert.Contains("on its coil", p!.Reason, StringComparison.Ordinal));
        Assert.Contains("is free", new MurrayLoop { ReturnArm = new(2, 0), FaultyArm = new(1, 0), FarEnd = FarEnd.Free }.Locate(SampledRuns.Run).Problem!.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-1, 1)]
    [InlineData(0, 1)]
    [InlineData(1, double.NaN)]
    [InlineData(1, double.PositiveInfinity)]
    public void An_impossible_arm_is_refused_by_name(double p, double q)
    {
        var problem = new MurrayLoop { ReturnArm = new(p, 0), FaultyArm = new(q, 0) }.Locate(SampledRuns.Run).Problem!;

        Assert.StartsWith("Murray loop, arm on the", problem.Place, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Remedy);
    }

    [Fact]
    public void A_bad_run_is_refused_by_the_name_of_its_stretch()
    {
        var reading = new CapacitancePerMetre { Near = new(1e-9, 0) };
        var good = SampledRuns.Run.Stretches[0];
        Run Only(Stretch stretch) => new() { Stretches = [stretch] };

        Assert.Contains("no stretch", reading.Locate(new Run { Stretches = [] }).Problem!.Reason, StringComparison.Ordinal);
        Assert.All(
            new[]
            {
                good with { LengthMetres = 0 }, good with { LengthMetres = double.NaN }, good with { Size = default },
                good with { TemperatureKelvins = 15 }, good with { LengthSpreadShare = -1 }, good with { FaradsPerMetre = 0 },
            },
            bad => Assert.Contains(good.Name, reading.Locate(Only(bad)).Problem!.Place, StringComparison.Ordinal));
        Assert.Contains("stray", (reading with { Stray = new(1e-9, 0) }).Locate(SampledRuns.Run).Problem!.Reason, StringComparison.Ordinal);
    }

    private static double Each(Stretch stretch, WireSize size) => CopperWire.OhmsPerMetre(size, stretch.TemperatureKelvins);
}
