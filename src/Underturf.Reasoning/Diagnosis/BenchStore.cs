using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>The circuits of one epoch: one station's as a feeder, two stations' as a bench; each laid out once.</summary>
internal sealed class BenchStore(IReadOnlyDictionary<string, StationPath> paths, PracticeBook book, Func<string, Supply> supplyOf, Func<string, Unknowns> unknownsOf)
{
    private readonly Dictionary<Key, (Bench Bench, Prediction Sound)> benches = [];
    private readonly Dictionary<string, StationFeeder> feeders = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Station, LegKey Leg), StationFeeder> cut = [];
    private readonly Dictionary<(string Station, string Partner, string Place, bool Beyond), StationFeeder?> joined = [];
    private readonly Dictionary<(string Station, string Other, Suspect Pair), (Bench Bench, Prediction Sound)> beside = [];

    public StationPath Path(string station) => paths[station];

    public StationPath? PathOrNull(string station) => paths.GetValueOrDefault(station);

    /// <summary>What an instrument would show of these stations when the suspects are wrong and nothing else.</summary>
    public Prediction Predict(Measure measures, IReadOnlyList<string> stations, string? place, bool inrush, Suspect[] active)
    {
        var pair = Pair(active, stations);
        if (stations.Count == 1)
        {
            return (pair is null ? Feeder(stations[0], active).Predict(measures, place, inrush, active) : Paired(measures, stations[0], place, inrush, active, pair))
                ?? Benched(new Key(measures, stations[0], Partner(stations[0], pair!), place, inrush, JoinAt(pair!), pair!.Fault.Swaps), true, active);
        }

        return pair is not null && !(pair.Concerns(stations[0]) && pair.Concerns(stations[1]))
            ? Beside(stations, active, pair)
            : Benched(new Key(measures, stations[0], stations[1], place, inrush, pair is null ? null : JoinAt(pair), pair?.Fault.Swaps == true), pair is not null, active);
    }

    /// <summary>
    /// A pair that one feeder can show: what a terminal reads with the other's conductor on it, or with the other's valves hanging on the place where
    /// the two are joined. Nothing where the two conductors, or their commons, make a loop.
    /// </summary>
    private Prediction? Paired(Measure measures, string station, string? place, bool inrush, Suspect[] active, Suspect pair)
    {
        var partner = Partner(station, pair);
        if (pair.Fault.Swaps)
        {
            return Swapped(measures) is var asked && asked == Measure.CoilVolts && place is not null ? Prediction.Nothing(true)
                : asked is { } what ? Feeder(partner).Predict(what, null, inrush, active) with { IsTouched = true }
                : null;
        }

        return pair.Fault.Joins && Joined(station, partner, pair) is { } feeder ? feeder.Predict(measures, place, inrush, active) with { IsTouched = true } : null;
    }

    /// <summary>What is read of the other's circuit where two are swapped; nothing where the terminal has no part in it.</summary>
    private static Measure? Swapped(Measure measures) => measures switch
    {
        // The leads are joined at a valve that the terminal does not reach.
        Measure.JoinedOhms => Measure.StationOhms,
        Measure.CoilVolts or Measure.StationOhms or Measure.ReversedOhms or Measure.EarthOhms or Measure.TerminalVolts or Measure.StationAmps => measures,
        _ => null,
    };

    private StationFeeder? Joined(string station, string partner, Suspect pair)
    {
        var meeting = Meeting(pair)!;
        var key = (station, partner, meeting, pair.IsInside);
        if (!joined.TryGetValue(key, out var feeder))
        {
            feeder = pair.IsInside ? JoinedBeyond(paths[station], paths[partner], meeting) : JoinedIn(paths[station], paths[partner], meeting);
            joined[key] = feeder;
        }

        return feeder;
    }

    private StationFeeder? JoinedIn(StationPath path, StationPath partner, string place) =>
        JoinedPath.Of(path, partner, place) is { } both ? NewFeeder(both.Path, [path.Legs.Count - 1, both.PartnersEnd]) : null;

    /// <summary>The stretch that is cut makes a leg more.</summary>
    private StationFeeder? JoinedBeyond(StationPath path, StationPath partner, string place) =>
        JoinedPath.Beyond(path, partner, place) is { } both ? NewFeeder(both.Path, [path.Legs.Count, both.PartnersEnd], both.Cut) : null;

    /// <summary>
    /// Two terminals read against each other, one of them crossed or swapped with a third station: its circuit is the third's, or has the third's valves on it. A
    /// crossing that makes a loop is taken as none.
    /// </summary>
    private Prediction Beside(IReadOnlyList<string> stations, Suspect[] active, Suspect pair)
    {
        if (!beside.TryGetValue((stations[0], stations[1], pair), out var known))
        {
            var laid = stations.Select(s => !pair.Concerns(s) ? paths[s]
                : pair.Fault.Swaps ? paths[Partner(s, pair)]
                : JoinedPath.Of(paths[s], paths[Partner(s, pair)], Meeting(pair)!)?.Path ?? paths[s]).ToList();
            var bench = BenchLayout.Of(new BenchSetup(laid, Measure.BetweenStationsOhms, null, supplyOf(laid[0].Controller)), book, Unknowns(stations[0]));
            known = (bench, new Predictor(book, Unknowns(stations[0])).Predict(bench, null) with { IsTouched = true });
            beside[(stations[0], stations[1], pair)] = known;
        }

        return known.Bench.Vary(book, active) is { } variation
            ? new Predictor(book, Unknowns(stations[0])).Predict(known.Bench, variation) with { IsTouched = true }
            : known.Sound;
    }

    /// <summary>
    /// What bounds the ohms that a terminal shows with another's valves on its conductor: its own loop, the ohms of it up to the place where they are joined at the
    /// farthest, and the other's loop. Nothing where the wires branch or do not meet there.
    /// </summary>
    public (Prediction Own, double ToPlaceOhms, Prediction Other)? Loops(string station, Suspect pair)
    {
        var partner = Partner(station, pair);
        var farthest = pair.IsInside ? JoinedPath.Next(paths[station], Meeting(pair)!) : pair.Place;
        return farthest is null || !IsHere(pair, [station]) || paths[station].Valves.Count > 1 || paths[partner].Valves.Count > 1 ? null
            : (Loop(station), Feeder(station).OhmsTo(farthest), Loop(partner));
    }

    private Prediction Loop(string station) => Feeder(station).Predict(Measure.StationOhms, null, false, []);

    private Suspect? Pair(Suspect[] active, IReadOnlyList<string> stations)
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

    private Prediction Benched(Key key, bool paired, Suspect[] active)
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

    /// <summary>Where a suspect sits inside a stretch, the feeder with that stretch cut; of several the first, the others lie at their stretch's far end.</summary>
    private StationFeeder Feeder(string station, Suspect[] active)
    {
        foreach (var suspect in active)
        {
            if (suspect is { IsInside: true, Leg: { } leg } && suspect.Station == station && paths[station].IndexOf(leg) is var stretch and >= 0)
            {
                return Cut(station, leg, stretch);
            }
        }

        return Feeder(station);
    }

    private StationFeeder Cut(string station, LegKey leg, int stretch)
    {
        if (!cut.TryGetValue((station, leg), out var feeder))
        {
            var path = CutPath.Of(paths[station], stretch);
            feeder = NewFeeder(path, [path.Legs.Count - 1], stretch);
            cut[(station, leg)] = feeder;
        }

        return feeder;
    }

    private StationFeeder NewFeeder(StationPath path, IReadOnlyList<int> ends, int cut = -1) =>
        new(path, book, supplyOf(path.Controller), unknownsOf(path.Controller), ends, cut);

    /// <summary>Whether a pair changes what is measured: it holds a station of it, and both were there at that time and, where it has a place, met in it.</summary>
    private bool IsHere(Suspect pair, IReadOnlyList<string> stations) => stations.Any(pair.Concerns)
        && (Meeting(pair) is var place && (place is not null || pair.Place is null)) && Meets(pair.Station!, place) && Meets(pair.Other!, place);

    private bool Meets(string station, string? place) => paths.TryGetValue(station, out var path) && (place is null || path.LegTo(place) >= 0);

    private static string Partner(string station, Suspect pair) => pair.Station == station ? pair.Other! : pair.Station!;

    private string? JoinAt(Suspect pair) => pair.Fault.Joins ? Meeting(pair) : null;

    /// <summary>The last place that both of a pair are known to pass where they are joined; nothing where they have none, or not at that time.</summary>
    private string? Meeting(Suspect pair) => !pair.IsInside ? pair.Place
        : paths.TryGetValue(pair.Station!, out var path) && path.IndexOf(pair.Leg!.Value) is var stretch and >= 0 ? path.Legs[stretch].From : null;

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
