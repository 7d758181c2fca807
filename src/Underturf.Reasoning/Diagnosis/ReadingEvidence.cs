using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A reading with an instrument, weighed by solving the circuit in front of it.</summary>
internal sealed class ReadingEvidence(Moment moment, IReadOnlyList<string> stations) : Evidence(moment, stations)
{
    private readonly Dictionary<Prediction, double[]> known = [];

    public required Shown Shown { get; init; }

    public required bool Drifting { get; init; }

    public required Display Display { get; init; }

    public required BenchStore Benches { get; init; }

    public required Measure Measures { get; init; }

    /// <summary>The caution of its way of reading.</summary>
    public required string Caution { get; init; }

    public required string? Place { get; init; }

    public required PracticeBook Book { get; init; }

    /// <summary>The SI prediction under suspects, for tables of predicted beside read.</summary>
    public Prediction Predict(IReadOnlyList<Suspect> active) => Benches.Predict(Measures, Stations, Place, inrush: false, active);

    /// <summary>The two-sided tail of the display under a sound circuit; for an open prediction or an over-range display its chance.</summary>
    public override double Surprise(double logLevel)
    {
        var prediction = Predict([]);
        if (prediction.IsOpen || Shown.Value is not { } value)
        {
            return -Display.LogChance(prediction, logLevel) / Math.Log(10);
        }

        var mean = prediction.MeanAt(logLevel);
        var away = Math.Abs(value.Si - mean) / Display.Sigma(Display.Instrument, prediction, mean);
        return -(Normal.LogCdf(-away) + Math.Log(2)) / Math.Log(10);
    }

    protected override double LogChanceUnmodelled => Display.LogChanceUnmodelled() + Math.Log(Drifting ? Book.Unmodelled.DriftImagined : 1 - Book.Unmodelled.DriftImagined);

    protected override void WeighActive(IReadOnlyList<Suspect> active, CoilLevels levels, double[] into)
    {
        var prediction = Predict(active);
        var unsteady = Math.Log(Unsteady(active, prediction));
        if (prediction.IsOpen || prediction.LevelSlope == 0)
        {
            Add(Display.LogChance(prediction, 0) + unsteady, into);
            return;
        }

        var chances = Chances(prediction, levels);
        for (var i = 0; i < into.Length; i++)
        {
            into[i] += chances[i] + unsteady;
        }
    }

    /// <summary>The same ohms anywhere along a run predict the same, so most suspects find their chances here.</summary>
    private double[] Chances(Prediction prediction, CoilLevels levels)
    {
        prediction = prediction with { IsTouched = false };
        if (!known.TryGetValue(prediction, out var chances))
        {
            chances = [.. levels.LogLevels.Select(level => Display.LogChance(prediction, level))];
            known[prediction] = chances;
        }

        return chances;
    }

    protected override string PredictedActive(IReadOnlyList<Suspect> active, double logLevel)
    {
        var prediction = Predict(active);
        if (prediction.IsOpen)
        {
            return "over range";
        }

        var mean = prediction.MeanAt(logLevel);
        return Say.Amount(mean, Display.Sigma(Display.Instrument, prediction, mean), Display.Instrument.Dimension);
    }

    /// <summary>Chance of what was noted of the display's rest: a drifting fault shows where its drift is more than the instrument's own error.</summary>
    private double Unsteady(IReadOnlyList<Suspect> active, in Prediction prediction)
    {
        var chance = Book.Unmodelled.DriftImagined;
        if (prediction is { IsTouched: true, IsOpen: false } && Display.Instrument.Dimension == Quantities.Dimension.Resistance)
        {
            var error = Display.Instrument.Sigma(prediction.Mean);
            chance = active.Where(s => s.Fault!.Drift * s.Amount > error).Select(s => s.Fault!.Drifting).Append(chance).Max();
        }

        return Drifting ? chance : 1 - chance;
    }
}
