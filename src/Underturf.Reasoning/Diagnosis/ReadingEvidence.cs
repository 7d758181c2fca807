using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A reading with an instrument, weighed by solving the circuit in front of it.</summary>
internal sealed class ReadingEvidence(Moment moment, IReadOnlyList<string> stations) : Evidence(moment, stations)
{
    private Predictions? predictions;
    private double? logImagined;
    private double? logMisnoted;

    /// <summary>The last chances that were worked out, of a reading that no suspect touches and of one: the former is asked for again and again.</summary>
    private (Prediction? Prediction, object? Outlook, double LogChance) untouched;
    private (Prediction? Prediction, object? Outlook, double LogChance) touched;

    public required Shown Shown { get; init; }

    public required bool Drifting { get; init; }

    public required Display Display { get; init; }

    public required BenchStore Benches { get; init; }

    public required Measure Measures { get; init; }

    /// <summary>True where a supply feeds what is measured.</summary>
    public bool IsFed => Measures.IsFed();

    /// <summary>The caution of its way of reading.</summary>
    public required string Caution { get; init; }

    public required string? Place { get; init; }

    public required PracticeBook Book { get; init; }

    /// <summary>True between two stations that may return by different commons: lifted, these do not meet, and nothing is read.</summary>
    public required bool MayBeApart { get; init; }

    /// <summary>Readings taken in the same way at the same controller, this one among them: a figure may have been noted under the wrong station.</summary>
    public IReadOnlyList<ReadingEvidence> Fellows { get; set; } = [];

    /// <summary>The SI prediction under suspects, for tables of predicted beside read.</summary>
    public Prediction Predict(Suspect[] active) => (predictions ??= new Predictions(Benches, Measures, Stations, Place, inrush: false)).Of(active);

    /// <summary>What the suspects predict; nothing where they leave no current to flow, or room for anything, or where the commons may not meet.</summary>
    public Prediction? Closed(Suspect[] suspects, Cures cures)
    {
        var active = Active(suspects, cures);
        return !MayBeApart && !AllowAnything(active) && Predict(active) is { IsOpen: false } prediction ? prediction : null;
    }

    public override double LogCeiling => Math.Max(Display.LogCeiling, LogChanceMisnoted);

    public override bool IsOfTheSame(Evidence other) =>
        other is ReadingEvidence reading && reading.Measures == Measures && reading.Place == Place && Stations.ToHashSet(StringComparer.Ordinal).SetEquals(reading.Stations);

    public override int Side(Suspect[] suspects, Outlook outlook, Cures cures, JointReadings? before = null)
    {
        if (IsFed || MayBeApart)
        {
            return 0;
        }

        var closed = Closed(suspects, cures);
        return Shown.Value is { } value && (closed is null || (before?.MeanOf(this) ?? outlook.Mean(closed)) > value.Si) ? 1 : -1;
    }

    /// <summary>The two-sided tail of the display under a sound circuit; for an open prediction or an over-range display its chance.</summary>
    public override double Surprise(Outlook outlook)
    {
        var prediction = Predict([]);
        if (prediction.IsOpen || Shown.Value is not { } value)
        {
            return -Display.LogChance(prediction, outlook) / Math.Log(10);
        }

        var (mean, sigma) = Display.Expect(Display.Instrument, prediction, outlook);
        return -(Normal.LogCdf(-Math.Abs(value.Si - mean) / sigma) + Math.Log(2)) / Math.Log(10);
    }

    /// <summary>A figure that does not disagree with the one read; over range again.</summary>
    public override double ChanceToRepeat(Suspect[] active, Outlook outlook)
    {
        var (prediction, instrument) = (Predict(active), Display.Instrument);
        if (prediction.IsOpen || Shown.Value is not { } value)
        {
            return Shown.IsOverRange == prediction.IsOpen ? 1 : Shown.IsOverRange ? Math.Exp(Display.LogChance(prediction, outlook)) : 0;
        }

        var (mean, sigma) = Display.Expect(instrument, prediction, outlook);
        var reach = Book.Questions.DisagreeSpreads * instrument.Sigma(value.Si);
        return Normal.Cdf((value.Si + reach - mean) / sigma) - Normal.Cdf((value.Si - reach - mean) / sigma);
    }

    protected override double LogChanceUnmodelled => Display.LogChanceUnmodelled() + LogImagined;

    /// <summary>Anything, or what another station shows.</summary>
    protected override double LogChanceMisnoted => logMisnoted ??= Misnoted([.. Fellows.Where(f => f.Stations[0] != Stations[0])]);

    private double Misnoted(IReadOnlyList<ReadingEvidence> others) => others.Count == 0 ? LogChanceUnmodelled : LogImagined + LogMath.LogAdd(
        Math.Log(1 - Book.Unmodelled.Anothers) + Display.LogChanceUnmodelled(),
        Math.Log(Book.Unmodelled.Anothers / others.Count) + LogMath.LogSumExp([.. others.Select(f => Display.LogChanceOfAnother(f.Shown))]));

    protected override double LogChanceActive(Suspect[] active, Outlook outlook, JointReadings? before)
    {
        var prediction = Predict(active);
        if (MayBeApart)
        {
            return LogUnsteady(active, prediction) + LogMath.LogAdd(
                Math.Log(1 - Book.Wire.CommonsApart) + Alone(prediction, outlook),
                Math.Log(Book.Wire.CommonsApart) + Display.LogChance(Prediction.Open(false), outlook));
        }

        var unsteady = LogUnsteady(active, prediction);
        var chance = prediction.IsOpen || before is null || (before.IsEmpty && !prediction.IsTouched) ? Alone(prediction, outlook) : Display.LogChance(before.Expect(prediction, Display.Instrument));
        if (!prediction.IsOpen && Shown.Value is { } value)
        {
            before?.Add(this, prediction, Display, value.Si);
        }

        return chance + unsteady;
    }

    private double Alone(Prediction prediction, Outlook outlook)
    {
        ref var last = ref prediction.IsTouched ? ref touched : ref untouched;
        if (!ReferenceEquals(prediction, last.Prediction) || last.Outlook != outlook.Version)
        {
            last = (prediction, outlook.Version, Display.LogChance(prediction, outlook));
        }

        return last.LogChance;
    }

    protected override string PredictedActive(Suspect[] active, Outlook outlook)
    {
        var prediction = Predict(active);
        if (prediction.IsOpen)
        {
            return "over range";
        }

        var (mean, sigma) = Display.Expect(Display.Instrument, prediction, outlook);
        return mean > Display.Instrument.Most ? "over range" : Say.Amount(mean, sigma, Display.Instrument.Dimension);
    }

    /// <summary>log of the chance of what was noted of the display's rest: a drifting fault shows where its drift is more than the instrument's own error.</summary>
    private double LogUnsteady(Suspect[] active, Prediction prediction)
    {
        var imagined = Book.Unmodelled.DriftImagined;
        var chance = imagined;
        if (prediction is { IsTouched: true, IsOpen: false } && Display.Instrument.Dimension == Quantities.Dimension.Resistance)
        {
            var error = Display.Instrument.Sigma(prediction.Mean);
            foreach (var suspect in active)
            {
                chance = suspect.Fault.Drift * suspect.Amount > error ? Math.Max(chance, suspect.Fault.Drifting) : chance;
            }
        }

        return chance == imagined ? LogImagined : Math.Log(Drifting ? chance : 1 - chance);
    }

    /// <summary>The same of a display that nothing moves.</summary>
    private double LogImagined => logImagined ??= Math.Log(Drifting ? Book.Unmodelled.DriftImagined : 1 - Book.Unmodelled.DriftImagined);
}
