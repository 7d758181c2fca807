using Underturf.Networks.Wiring.FaultDistance;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Tests.Networks;

/// <summary>Linearised spreads of distances against 20,000 seeded draws of everything that is uncertain. All values invented.</summary>
public sealed class FaultDistanceSpreadTests(ITestOutputHelper output)
{
    private const int Draws = 20_000;

    /// <summary>Sampling error of a standard deviation from 20,000 draws is 0.5 %; the rest is curvature.</summary>
    private const double Tolerance = 0.03;

    private static readonly BridgeContacts contacts = new(new(0.2, 0.02), new(0.05, 0.01), new(0.2, 0.02));

    [Fact]
    public void A_Murray_loop_spreads_as_its_draws_do()
    {
        var reading = new MurrayLoop { ReturnArm = new(620, 2), FaultyArm = new(380, 2), Contacts = contacts };
        Compare("Murray", reading.Locate, (random, run) => Drawn(random, reading).Locate(run));
        var read = reading with { Loop = new(5.1, 0.05) };
        Compare("Murray with the loop read", read.Locate, (random, run) => Drawn(random, read).Locate(run));
    }

    [Fact]
    public void A_Varley_loop_spreads_as_its_draws_do()
    {
        var reading = new VarleyLoop { ReturnArm = new(100, 0.1), FaultyArm = new(100, 0.1), AtEarth = new(1.1, 0.03), Contacts = contacts };
        Compare("Varley", reading.Locate, (random, run) => Drawn(random, reading).Locate(run));
        var both = reading with { AtConductor = new(5.2, 0.03) };
        Compare("Varley with both balances", both.Locate, (random, run) => Drawn(random, both).Locate(run));
    }

    [Theory]
    [InlineData(FaultPath.ToEarth, 121.62, 120.9)]
    [InlineData(FaultPath.BetweenPair, 3.1, 3.8)]
    public void Ohms_from_both_ends_spread_as_their_draws_do(FaultPath path, double near, double far)
    {
        var reading = TwoEnds(path, near, far);
        Compare($"two ends, {path}", reading.Locate, (random, run) => Drawn(random, reading).Locate(run));
    }

    /// <summary>
    /// A stated limit of the first order: the estimate lies 6 m behind a change from 18 to 14 AWG and its spread reaches across, so the spread
    /// of the thick stretch is stated and a mixture of both is drawn.
    /// </summary>
    [Fact]
    public void A_change_of_gauge_within_the_spread_is_overstated_by_less_than_a_fifth()
    {
        var reading = TwoEnds(FaultPath.ToEarth, 121.3, 120.9);
        var (estimate, _, spread) = Sample("two ends across a change of gauge", reading.Locate, (random, run) => Drawn(random, reading).Locate(run));

        Assert.InRange(estimate.SpreadMetres / spread, 1, 1.2);
    }

    [Fact]
    public void Capacitances_spread_as_their_draws_do()
    {
        var ratio = new CapacitanceRatio { Near = new(8.1e-9, 0.1e-9), Far = new(6.2e-9, 0.1e-9), Stray = new(0.1e-9, 0.02e-9) };
        Compare("capacitance ratio", ratio.Locate, (random, run) => Drawn(random, ratio).Locate(run));
        var metre = new CapacitancePerMetre { Near = ratio.Near, Stray = ratio.Stray };
        Compare("capacitance a metre", metre.Locate, (random, run) => (metre with { Near = random.Draw(metre.Near), Stray = random.Draw(metre.Stray) }).Locate(run));
    }

    private static TwoEndOhms TwoEnds(FaultPath path, double near, double far) => new()
    {
        Path = path,
        Near = new(near, 0.05),
        Far = new(far, 0.05),
        NearContact = new(0.2, 0.02),
        FarContact = new(0.2, 0.02),
        FaultMovesOhms = 0.1,
    };

    private static MurrayLoop Drawn(SeededGenerator random, MurrayLoop reading) => reading with
    {
        ReturnArm = random.Draw(reading.ReturnArm),
        FaultyArm = random.Draw(reading.FaultyArm),
        Loop = reading.Loop is { } loop ? random.Draw(loop) : null,
        Contacts = Drawn(random),
    };

    private static VarleyLoop Drawn(SeededGenerator random, VarleyLoop reading) => reading with
    {
        ReturnArm = random.Draw(reading.ReturnArm),
        FaultyArm = random.Draw(reading.FaultyArm),
        AtEarth = random.Draw(reading.AtEarth),
        AtConductor = reading.AtConductor is { } second ? random.Draw(second) : null,
        Contacts = Drawn(random),
    };

    private static TwoEndOhms Drawn(SeededGenerator random, TwoEndOhms reading) => reading with
    {
        Near = random.Draw(reading.Near with { SpreadOhms = Math.Sqrt((0.05 * 0.05) + (0.1 * 0.1)) }),
        Far = random.Draw(reading.Far),
        NearContact = random.Draw(reading.NearContact),
        FarContact = random.Draw(reading.FarContact),
        FaultMovesOhms = 0,
    };

    private static CapacitanceRatio Drawn(SeededGenerator random, CapacitanceRatio reading) =>
        reading with { Near = random.Draw(reading.Near), Far = random.Draw(reading.Far), Stray = random.Draw(reading.Stray) };

    private static BridgeContacts Drawn(SeededGenerator random) =>
        new(random.Draw(contacts.FaultyEnd), random.Draw(contacts.FarJoint), random.Draw(contacts.ReturnEnd));

    private void Compare(string method, Func<Run, Outcome<DistanceEstimate>> locate, Func<SeededGenerator, Run, Outcome<DistanceEstimate>> draw)
    {
        var (estimate, mean, spread) = Sample(method, locate, draw);

        Assert.InRange(estimate.SpreadMetres / spread, 1 - Tolerance, 1 + Tolerance);
        Assert.Equal(estimate.Metres, mean, 0.1 * spread);
        Assert.Equal(estimate.SpreadMetres, Math.Sqrt(estimate.Sources.Sum(s => s.SpreadMetres * s.SpreadMetres)), 1e-9);
    }

    private (DistanceEstimate Estimate, double Mean, double Spread) Sample(
        string method, Func<Run, Outcome<DistanceEstimate>> locate, Func<SeededGenerator, Run, Outcome<DistanceEstimate>> draw)
    {
        var estimate = locate(SampledRuns.Run).Value;
        var random = new SeededGenerator(51).Fork(method);
        var (sum, squares) = (0.0, 0.0);
        for (var k = 0; k < Draws; k++)
        {
            var metres = draw(random, random.Draw(SampledRuns.Run)).Value.Metres;
            sum += metres;
            squares += metres * metres;
        }

        var mean = sum / Draws;
        var spread = Math.Sqrt((squares / Draws) - (mean * mean));
        output.WriteLine($"{method}: {estimate.Metres:0.00} m, linearised spread {estimate.SpreadMetres:0.000} m, sampled {mean:0.00} and {spread:0.000} m");
        return (estimate, mean, spread);
    }
}
