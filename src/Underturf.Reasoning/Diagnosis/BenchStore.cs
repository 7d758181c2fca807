using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>The circuits of one epoch: one station's as a feeder, two stations' as a bench; each laid out once.</summary>
internal sealed class BenchStore(IReadOnlyDictionary<string, StationPath> paths, PracticeBook book, Func<string, Supply> supplyOf, Func<string, Unknowns> unknownsOf)
{
    private readonly Dictionary<Key, (Bench Bench, Prediction Sound)> benches = [];
    private readonly Dictionary<string, StationFeeder> feeders = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Station, string Partner, string Place), StationFeeder?> joined = [];

    public StationPath Path(string station) => paths[station];

    public StationPath? PathOrNull(string station) => paths.GetValueOrDefault(station);

    /// <summary>What an instrument would show of these stations when the suspects are wrong and nothing else.</summary>
    public Prediction Predict(Measure measures, IReadOnlyList<string> stations, string? place, bool inrush, IReadOnlyList<Suspect> active)
    {
        var pair = Pair(active, stations);
        if (stations.Count > 1 || pair is not null)
        {
            return (pair is null ? null : Paired(measures, stations, place, inrush, active, pair))
                ?? Benched(new Key(measures, stations[0], Partner(stations, pair), place, inrush, pair?.Fault!.Joins == true ? pair.Place : null, pair?.Fault!.Swaps == true), pair is not null, active);
        }

        return Feeder(stations[0]).Predict(measures, place, inrush, active);
    }

    /// <summary>
    /// A pair that one feeder can show: what a terminal reads with the other's conductor on it, or with the other's valves hanging on the place where
    /// the two are joined. Nothing where the two conductors, or their commons, make a loop.
    /// </summary>
    private Prediction? Paired(Measure measures, IReadOnlyList<string> stations, string? place, bool inrush, IReadOnlyList<Suspect> active, Suspect pair)
    {
        if (stations.Count > 1 || !(pair.Fault!.Swaps || pair.Fault.Joins))
        {
            return null;
        }

        var partner = pair.Station == stations[0] ? pair.Other! : pair.Station!;
        if (pair.Fault.Swaps)
        {
            return measures is Measure.StationOhms or Measure.ReversedOhms or Measure.EarthOhms or Measure.TerminalVolts or Measure.StationAmps || (measures == Measure.CoilVolts && place is null)
                ? Feeder(partner).Predict(measures, null, inrush, active) with { IsTouched = true }
                : null;
        }

        if (!joined.TryGetValue((stations[0], partner, pair.Place!), out var feeder))
        {
            feeder = JoinedPath.Of(paths[stations[0]], paths[partner], pair.Place!) is { } both
                ? NewFeeder(both.Path, [paths[stations[0]].Legs.Count - 1, both.PartnersEnd])
                : null;
            joined[(stations[0], partner, pair.Place!)] = feeder;
        }

        return feeder is null ? null : feeder.Predict(measures, place, inrush, active) with { IsTouched = true };
    }

    private Suspect? Pair(IReadOnlyList<Suspect> active, IReadOnlyList<string> stations)
    {
        foreach (var suspect in active)
        {
            if (suspect.IsPair && IsHere(suspect, stations))
            {
                return suspect;
            }
        }

        return null;
    }

    private Prediction Benched(Key key, bool paired, IReadOnlyList<Suspect> active)
    {
        var (bench, sound) = Bench(key);
        return bench.Vary(book, active) is { } variation
            ? new Predictor(book, Unknowns(key.Station)).Predict(bench, variation)
            : sound with { IsTouched = paired };
    }

    private StationFeeder Feeder(string station)
    {
        if (!feeders.TryGetValue(station, out var feeder))
        {
            feeder = NewFeeder(paths[station], [paths[station].Legs.Count - 1]);
            feeders[station] = feeder;
        }

        return feeder;
    }

    private StationFeeder NewFeeder(StationPath path, IReadOnlyList<int> ends) => new(path, book, supplyOf(path.Controller), unknownsOf(path.Controller), ends);

    /// <summary>
    /// Whether a pair changes what is measured: it holds the one station, or just the two that are measured against each other, and both
    /// were there at that time and, where it has a place, met in it.
    /// </summary>
    private bool IsHere(Suspect pair, IReadOnlyList<string> stations)
    {
        var concerned = pair.Station == stations[0] || pair.Other == stations[0];
        var both = stations.Count == 1 || pair.Station == stations[1] || pair.Other == stations[1];
        return concerned && both && Meets(pair.Station!, pair.Place) && Meets(pair.Other!, pair.Place);
    }

    private bool Meets(string station, string? place) => paths.TryGetValue(station, out var path) && (place is null || path.LegTo(place) >= 0);

    private static string? Partner(IReadOnlyList<string> stations, Suspect? pair) =>
        stations.Count > 1 ? stations[1] : pair is null ? null : pair.Station == stations[0] ? pair.Other : pair.Station;

    private Unknowns Unknowns(string station) => unknownsOf(paths[station].Controller);

    private (Bench Bench, Prediction Sound) Bench(Key key)
    {
        if (!benches.TryGetValue(key, out var known))
        {
            IReadOnlyList<StationPath> laid = key.Other is null ? [paths[key.Station]] : [paths[key.Station], paths[key.Other]];
            var bench = BenchLayout.Of(new BenchSetup(laid, key.Measures, key.Place, supplyOf(paths[key.Station].Controller), key.Inrush, key.JoinAt, key.Swapped), book, Unknowns(key.Station));
            known = (bench, new Predictor(book, Unknowns(key.Station)).Predict(bench, null));
            benches[key] = known;
        }

        return known;
    }

    private readonly record struct Key(Measure Measures, string Station, string? Other, string? Place, bool Inrush, string? JoinAt, bool Swapped);
}
