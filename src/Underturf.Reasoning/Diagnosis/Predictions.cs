namespace Underturf.Reasoning.Diagnosis;

/// <summary>What one note's circuit shows. With nothing wrong, or one thing, it is asked for under many outlooks and hangs on none, so that it is worked out once.</summary>
internal sealed class Predictions(BenchStore benches, Property.Practice.Measure measures, IReadOnlyList<string> stations, string? place, bool inrush)
{
    private readonly Dictionary<Suspect, Prediction> alone = [];
    private Prediction? sound;

    /// <summary>The last one that is not kept: on which side of a note it lies is asked right after its chance.</summary>
    private (Suspect[] Active, Prediction Prediction)? last;

    public Prediction Of(Suspect[] active)
    {
        if (active.Length == 0)
        {
            return sound ??= Work(active);
        }

        // A pair stands for one of thousands and is asked for once or twice; what stations share is asked of each of them, and most of it is out of the question.
        if (active.Length > 1 || active[0].IsPair || active[0].IsShared)
        {
            if (last is not { } known || !active.AsSpan().SequenceEqual(known.Active))
            {
                known = (active, Work(active));
                last = known;
            }

            return known.Prediction;
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
