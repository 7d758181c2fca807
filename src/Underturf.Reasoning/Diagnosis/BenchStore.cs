using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Lays each bench out once and remembers the sound prediction, which most suspects leave as it is.</summary>
internal sealed class BenchStore(IReadOnlyDictionary<string, StationPath> paths, PracticeBook book, Func<string, Supply> supplyOf)
{
    private readonly Dictionary<Key, (Bench Bench, Prediction Sound)> benches = [];
    private readonly Dictionary<(Bench, Suspect), DeadReading> bases = [];
    private readonly Predictor predictor = new(book);

    public StationPath Path(string station) => paths[station];

    public StationPath? PathOrNull(string station) => paths.GetValueOrDefault(station);

    /// <summary>What an instrument would show of these stations when the suspects are wrong and nothing else.</summary>
    public Prediction Predict(Measure measures, IReadOnlyList<string> stations, string? place, bool inrush, IReadOnlyList<Suspect> active)
    {
        var pair = active.FirstOrDefault(s => s.IsPair && IsHere(s, stations));
        var (bench, sound) = Bench(new Key(measures, stations[0], Partner(stations, pair), place, inrush, pair?.Fault!.Joins == true ? pair.Place : null, pair?.Fault!.Swaps == true));
        if (active.Count == 0)
        {
            return sound;
        }

        return (bench.Setup.IsFed ? null : FromBase(bench, active)) ?? Solved(bench, sound, pair is not null, active);
    }

    private Prediction Solved(Bench bench, in Prediction sound, bool paired, IReadOnlyList<Suspect> active) =>
        bench.Vary(book, active) is { } variation ? predictor.Predict(bench, variation) : sound with { IsTouched = paired };

    /// <summary>
    /// A lone suspect whose ohms are in series: its seat is solved once without them, and each stratum's ohms are added to that.
    /// </summary>
    private Prediction? FromBase(Bench bench, IReadOnlyList<Suspect> active)
    {
        if (active is not [{ Seat: { } seat } suspect] || (suspect.Fault!.SeriesOhms ?? suspect.Fault.DcSeriesOhms) is null)
        {
            return null;
        }

        if (!bases.TryGetValue((bench, seat), out var known))
        {
            known = predictor.PredictDead(bench, bench.Vary(book, [seat]));
            bases[(bench, seat)] = known;
        }

        var element = bench.SeriesElement(suspect);
        return element < 0 ? null : known.InSeries(element, suspect.Amount, suspect.SeriesLogSpread);
    }

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

    private (Bench Bench, Prediction Sound) Bench(Key key)
    {
        if (!benches.TryGetValue(key, out var known))
        {
            IReadOnlyList<StationPath> laid = key.Other is null ? [paths[key.Station]] : [paths[key.Station], paths[key.Other]];
            var bench = BenchLayout.Of(new BenchSetup(laid, key.Measures, key.Place, supplyOf(paths[key.Station].Controller), key.Inrush, key.JoinAt, key.Swapped), book);
            known = (bench, predictor.Predict(bench, null));
            benches[key] = known;
        }

        return known;
    }

    private readonly record struct Key(Measure Measures, string Station, string? Other, string? Place, bool Inrush, string? JoinAt, bool Swapped);
}
