namespace Underturf.Reasoning.Diagnosis;

/// <summary>What one note's circuit shows. With nothing wrong, or one thing, it is asked for under many outlooks and hangs on none, so that it is worked out once.</summary>
internal sealed class Predictions(BenchStore benches, Property.Practice.Measure measures, IReadOnlyList<string> stations, string? place, bool inrush)
{
    private readonly Dictionary<Suspect, Prediction> alone = [];
    private Prediction? sound;

    public Prediction Of(Suspect[] active)
    {
        if (active.Length == 0)
        {
            return sound ??= Work(active);
        }

        // A pair stands for one of thousands and is asked for once or twice.
        if (active.Length > 1 || active[0].IsPair)
        {
            return Work(active);
        }

        if (!alone.TryGetValue(active[0], out var prediction))
        {
            prediction = Work(active);
            alone[active[0]] = prediction;
        }

        return prediction;
    }

    private Prediction Work(Suspect[] active) => benches.Predict(measures, stations, place, inrush, active);
}
