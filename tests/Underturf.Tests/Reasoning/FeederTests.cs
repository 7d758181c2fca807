using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning;

/// <summary>A station's feeder is the quick way to what the nodal solution of the same circuit gives. Properties made up.</summary>
public sealed class FeederTests
{
    private static readonly PracticeBook book = PracticeBook.Default;

    public static TheoryData<Measure> Measures => [Measure.StationOhms, Measure.ReversedOhms, Measure.OtherCommonOhms, Measure.OutwardOhms, Measure.CoilOhms, Measure.JoinedOhms, Measure.EarthOhms, Measure.TerminalVolts, Measure.CoilVolts, Measure.StationAmps];

    [Theory]
    [MemberData(nameof(Measures))]
    public void A_feeder_reads_what_the_network_of_the_same_station_reads(Measure measures)
    {
        var compared = 0;
        for (ulong seed = 31; seed < 37; seed++)
        {
            var history = PropertyHistory.Fold(WorldGenerator.Make(seed, book).Log.Standing);
            var path = new PathFinder(history.Now, book).All().MaxBy(p => p.Legs.Count)!;
            var twin = path with { Valves = [.. path.Valves, new ValveEnd(null, path.Legs[0].To, 0, 28, "twin")] };
            var (supply, unknowns) = (new Supplies(history, book).Of(history.Now, path.Controller, 0), new Unknowns(book));
            var (feeder, place) = (new StationFeeder(twin, book, supply, unknowns, [twin.Legs.Count - 1], -1), path.Valves[0].Place);
            var bench = BenchLayout.Of(new BenchSetup([twin], measures, place, supply), book, unknowns);
            foreach (var suspects in Sets(twin, new SeededGenerator(seed)))
            {
                var expected = new Predictor(book, unknowns).Predict(bench, bench.Vary(book, suspects));
                Same(expected, feeder.Predict(measures, place, inrush: false, suspects), unknowns);
                compared++;
            }
        }

        Assert.True(compared > 1000);
    }

    [Theory]
    [InlineData(Measure.StationOhms)]
    [InlineData(Measure.EarthOhms)]
    public void Two_stations_joined_in_a_box_read_as_a_feeder_what_they_read_as_a_network(Measure measures)
    {
        var compared = 0;
        for (ulong seed = 31; seed < 41; seed++)
        {
            var history = PropertyHistory.Fold(WorldGenerator.Make(seed, book).Log.Standing);
            var paths = new PathFinder(history.Now, book).All();
            var (supply, unknowns) = (new Supplies(history, book).Of(history.Now, paths[0].Controller, 0), new Unknowns(book));
            foreach (var pair in new SuspectList(book, paths).Pairs(paths[0].Controller, _ => true).Where(p => p.Fault!.Joins))
            {
                var (path, partner) = (paths.First(p => p.Station == pair.Station), paths.First(p => p.Station == pair.Other));
                if (JoinedPath.Of(path, partner, pair.Place!) is { } both)
                {
                    var bench = BenchLayout.Of(new BenchSetup([path, partner], measures, null, supply, JoinAt: pair.Place), book, unknowns);
                    var feeder = new StationFeeder(both.Path, book, supply, unknowns, [path.Legs.Count - 1, both.PartnersEnd], -1);
                    Same(new Predictor(book, unknowns).Predict(bench, bench.Vary(book, [pair])), feeder.Predict(measures, null, inrush: false, []), unknowns);
                    compared++;
                }
            }
        }

        Assert.True(compared > 20);
    }

    [Theory]
    [InlineData(Measure.StationOhms)]
    [InlineData(Measure.OutwardOhms)]
    [InlineData(Measure.CoilVolts)]
    public void A_conductor_that_touches_the_common_inside_a_stretch_reads_what_the_network_with_a_place_there_reads(Measure measures)
    {
        const double Nudge = 1e-4;
        for (ulong seed = 31; seed < 37; seed++)
        {
            var history = PropertyHistory.Fold(WorldGenerator.Make(seed, book).Log.Standing);
            var path = new PathFinder(history.Now, book).All().MaxBy(p => p.Legs.Count)!;
            var (supply, unknowns) = (new Supplies(history, book).Of(history.Now, path.Controller, 0), new Unknowns(book));
            foreach (var suspect in new SuspectList(book, [path]).Private(path).SelectMany(f => f).Where(s => s.IsInside))
            {
                var stretch = path.IndexOf(suspect.Leg!.Value);
                var cut = CutPath.Of(path, stretch);
                var actual = new StationFeeder(cut, book, supply, unknowns, [cut.Legs.Count - 1], stretch).Predict(measures, path.Legs[0].To, inrush: false, [suspect]);
                double Laid(double share) => WithAPlaceAt(share, cut, stretch, suspect, measures, supply);
                Close(Laid(0.5), actual.Mean, actual.Mean);
                Close((Laid(0.5 + Nudge) - Laid(0.5 - Nudge)) / (2 * Nudge) * CutPath.ShareSpread, actual.Amounts[Prediction.Along], actual.Mean);
            }
        }
    }

    private static double WithAPlaceAt(double share, StationPath cut, int half, Suspect suspect, Measure measures, Supply supply)
    {
        var metres = 2 * cut.Legs[half].LengthMetres;
        var legs = cut.Legs.Select((l, i) => i == half ? l with { LengthMetres = share * metres } : i == half + 1 ? l with { LengthMetres = (1 - share) * metres } : l);
        var (path, unknowns) = (cut with { Legs = [.. legs] }, new Unknowns(book));
        var bench = BenchLayout.Of(new BenchSetup([path], measures, path.Legs[half == 0 ? 1 : 0].To, supply), book, unknowns);
        return new Predictor(book, unknowns).Predict(bench, bench.Vary(book, [suspect with { Seat = suspect.Seat with { Leg = cut.Legs[half].Key } }])).Mean;
    }

    private static IEnumerable<Suspect[]> Sets(StationPath path, SeededGenerator chance)
    {
        var list = new SuspectList(book, [path]);
        Suspect[] all = [.. list.Private(path).Concat(list.Shared(path.Controller)).SelectMany(f => f).Where(s => s.Fault!.Scope is not (FaultScope.Note or FaultScope.Unmodelled))];
        yield return [];
        foreach (var suspect in all)
        {
            yield return [suspect];
        }

        // Two conductors of one stretch or two ends of one coil at once are told apart in no reading here, so seats are drawn apart.
        for (var i = 0; i < 200; i++)
        {
            var (a, b) = (all[chance.NextInt(all.Length)], all[chance.NextInt(all.Length)]);
            if (a.Leg != b.Leg && a.Place != b.Place)
            {
                yield return [a, b];
            }
        }
    }

    private static void Same(Prediction expected, Prediction actual, Unknowns unknowns)
    {
        Assert.Equal(expected.IsOpen, actual.IsOpen);
        if (expected.IsOpen)
        {
            return;
        }

        Close(expected.Mean, actual.Mean, expected.Mean);
        Close(expected.LevelSlope, actual.LevelSlope, expected.Mean);
        Close(Math.Sqrt(expected.OwnVariance), Math.Sqrt(actual.OwnVariance + actual.Amounts.Sum(a => a * a)), expected.Mean);
        var prior = Outlook.Prior(unknowns.Count, 0, 0.1);
        Close(Math.Sqrt(prior.Variance(expected)), Math.Sqrt(prior.Variance(actual)), expected.Mean);
    }

    /// <summary>The network has the switch of the output, 0.1 milliohm, in it; beside a contact of half an ohm that is 0.02 %.</summary>
    private static void Close(double expected, double actual, double scale) => Assert.InRange(actual - expected, -2e-4 * (scale + 1e-3), 2e-4 * (scale + 1e-3));
}
