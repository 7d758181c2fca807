using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Lays each bench out once and remembers the sound prediction, which most suspects leave as it is.</summary>
internal sealed class BenchStore(IReadOnlyDictionary<string, StationPath> paths, PracticeBook book, Func<string, Supply> supplyOf)
{
    private readonly Dictionary<Key, (Bench Bench, Prediction Sound)> benches = [];
    private readonly Predictor predictor = new(book);

    public StationPath Path(string station) => paths[station];

    public StationPath? PathOrNull(string station) => paths.GetValueOrDefault(station);

    /// <summary>What an instrument would show of these stations when the suspects are wrong and nothing else.</summary>
    public Prediction Predict(Measure measures, IReadOnlyList<string> stations, string? place, bool inrush, IReadOnlyList<Suspect> active)
    {
        var pair = active.FirstOrDefault(s => s.IsPair && (s.Station == stations[0] || s.Other == stations[0]));
        var (bench, sound) = Bench(new Key(measures, stations[0], Partner(stations, pair), place, inrush, pair?.Fault!.Joins == true ? pair.Place : null, pair?.Fault!.Swaps == true));
        var variation = active.Count == 0 ? null : bench.Vary(book, active);
        return variation is null ? sound with { IsTouched = pair is not null } : predictor.Predict(bench, variation);
    }

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
