using Underturf.FieldLog;
using Underturf.Networks.Wiring;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Circuits;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.Spreads;

/// <summary>Spreads of stations that are on, by exact slopes, against 4000 draws of everything that is shared and single. Properties made up.</summary>
public sealed class CircuitSpreadTests(ITestOutputHelper output)
{
    /// <summary>What the first order may leave out where lengths are known to a quarter or better.</summary>
    private const double Curvature = 0.03;

    private static readonly PracticeBook book = PracticeBook.Default;

    public static TheoryData<int> Seeds => [1, 2, 3, 4, 5, 6];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Volts_and_amperes_spread_as_their_draws_do(int seed)
    {
        var random = new SeededGenerator(900 + (ulong)seed);
        var plan = Plan(random, (ulong)seed, l => l with { LogSpread = new[] { 0.04, 0.15, 0.25 }[random.NextInt(3)] });
        var worst = Compare(plan, random);
        output.WriteLine($"property {seed}: {plan.Stations.Count} stations; largest difference of a mean {worst.Mean:P2}, of a spread {worst.Spread:P2}");
    }

    /// <summary>A stated limit: the first order takes a length that nobody knows as if its spread were small.</summary>
    [Fact]
    public void Where_nobody_knows_a_length_the_stated_spread_is_too_small()
    {
        var random = new SeededGenerator(77);
        var plan = Plan(random, 7, l => l with { LogSpread = book.Wire.LengthSpread.Unknown });
        var worst = Compare(plan, random, curvature: 0.6);
        output.WriteLine($"lengths unknown: largest difference of a mean {worst.Mean:P2}, of a spread {worst.Spread:P2}");
        Assert.InRange(worst.Spread, 0.03, 0.6);
    }

    private (double Mean, double Spread) Compare(RunningPlan plan, SeededGenerator random, double curvature = Curvature)
    {
        var stated = new Circuit(plan, book, null);
        var spread = new CircuitSpread(stated.Running.Parts, plan.Supply, plan.Level, book);
        var readings = stated.Readings().ToList();
        var sampled = readings.Select(r => new Sampled(r.What)).ToList();
        for (var n = 0; n < Sampled.Count; n++)
        {
            foreach (var (k, reading) in new Circuit(Draw(plan, random, out var drawn), drawn, stated.Plungers).Readings().Index())
            {
                sampled[k].Add(reading.Reading.Magnitude);
            }
        }

        var differences = sampled.Select((s, k) => (Of: s, Is: s.Against(readings[k].Reading.Magnitude, spread.Of(readings[k].Reading)))).ToList();
        Assert.All(differences, d => Assert.True(Math.Abs(d.Is.Mean) < curvature + d.Of.MeanChance && Math.Abs(d.Is.Spread) < curvature + d.Of.SpreadChance, d.Is.ToString()));
        return (differences.Max(d => Math.Abs(d.Is.Mean)), differences.Max(d => Math.Abs(d.Is.Spread)));
    }

    private static RunningPlan Draw(RunningPlan plan, SeededGenerator random, out PracticeBook drawn)
    {
        var draws = new Draws(random, book);
        drawn = draws.Next(plan.Level);
        return plan with
        {
            Supply = draws.Draw(plan.Supply),
            Stations = [.. plan.Stations.Select(draws.Draw)],
            Master = plan.Master is { } master ? draws.Draw(master) : null,
            Relay = plan.Relay is null ? null : new PumpRelay(true, new Resistance(draws.Around(book.Relay.Ohms, book.Relay.LogSpread))),
        };
    }

    /// <summary>Three to five stations of a made-up property on two commons, with a master valve or a relay in some.</summary>
    private static RunningPlan Plan(SeededGenerator random, ulong seed, Func<Leg, Leg> known)
    {
        var history = PropertyHistory.Fold(WorldGenerator.Make(seed, book).Log.Standing);
        var all = new PathFinder(history.Now, book).All();
        var legs = new Dictionary<LegKey, Leg>();
        var paths = all.Select(p => p with
        {
            Common = random.NextInt(3) == 0 ? "A" : null,
            Legs = [.. p.Legs.Select(l => legs.TryGetValue(new LegKey(l.Id, l.To), out var seen) ? seen with { Parent = l.Parent } : legs[new LegKey(l.Id, l.To)] = known(l))],
        }).ToList();
        return new RunningPlan(
            [.. paths.Take(3 + random.NextInt(3))],
            seed % 2 == 0 ? paths[^1] : null,
            seed % 3 == 0 ? new PumpRelay(true, null) : null,
            new Supplies(history, book).Of(history.Now, paths[0].Controller, 0),
            new CoilLevel(0.1 * random.DrawNormal(), 0.02 + (0.08 * random.NextDouble())));
    }

    /// <summary>A plan laid and solved, plungers out and as they settle, or as they are told to stand.</summary>
    private sealed class Circuit
    {
        private readonly AcSolution first;
        private readonly AcSolution settled;

        public Circuit(RunningPlan plan, PracticeBook book, IReadOnlyList<Plunger>? plungers)
        {
            Running = new RunningStations(plan, book);
            var network = Running.Network;
            first = network.SolveAc(Running.Hertz).Value;
            Plungers = plungers ?? CoilStates.Settle(network, Running.Hertz, [.. Running.Coils.Select(c => c.Coil)]).Value.Plungers;
            foreach (var (coil, plunger) in Running.Coils.Zip(Plungers))
            {
                network = network.WithHenries(coil.Coil.Element, plunger == Plunger.Holds ? coil.Coil.HoldingHenries : coil.Coil.InrushHenries);
            }

            settled = network.SolveAc(Running.Hertz).Value;
            Assert.InRange(settled.KirchhoffResidualAmperes, 0, 1e-9);
        }

        public RunningStations Running { get; }

        public IReadOnlyList<Plunger> Plungers { get; }

        public IEnumerable<(string What, AcReading Reading)> Readings()
        {
            yield return ("terminal volts", settled.VoltsReading(Running.Hot, Running.Strip).Value);
            yield return ("supply amperes", settled.AmperesReading(Running.Source).Value);
            foreach (var laid in Running.All)
            {
                yield return ("amperes", settled.AmperesReading(laid.Output).Value);
            }

            foreach (var (path, end, coil) in Running.Coils)
            {
                var (conductor, common) = path.At(end.Leg);
                yield return ("volts to pull in", first.VoltsReading(conductor, common).Value);
                yield return ("volts settled", settled.VoltsReading(conductor, common).Value);
                yield return ("coil amperes", settled.AmperesReading(coil.Element).Value);
            }
        }
    }
}
