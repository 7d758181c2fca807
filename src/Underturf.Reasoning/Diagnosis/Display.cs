using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// The chance of a display: a reading is one of the finitely many things an instrument can show, over-range included, so that every
/// explanation, "something not modelled" too, spreads one unit of probability over the same displays.
/// </summary>
internal sealed class Display(InstrumentPractice instrument, PracticeBook book)
{
    /// <summary>A guard for the arithmetic: below this no chance matters.</summary>
    private const double LeastLog = -600;

    public double LogChance(in Prediction prediction, double logLevel, Shown shown)
    {
        if (prediction.IsOpen)
        {
            return Open(shown);
        }

        var mean = prediction.MeanAt(logLevel);
        var sigma = Sigma(prediction, mean);
        return shown.Value is { } value
            ? Mass(value, sigma, mean)
            : Math.Max(LeastLog, Normal.LogCdfInterval((instrument.Most - mean) / sigma, double.PositiveInfinity));
    }

    /// <summary>Standard deviation of the display about the mean: what the circuit leaves open and the instrument's own error.</summary>
    public double Sigma(in Prediction prediction, double mean)
    {
        var own = instrument.Sigma(mean);
        return Math.Sqrt(prediction.Variance + (own * own));
    }

    /// <summary>Standard deviation of the instrument's own error.</summary>
    public double OwnSigma(double si) => instrument.Sigma(si);

    /// <summary>Spread evenly over the decades that the instrument can show.</summary>
    public double LogChanceUnmodelled(Shown shown)
    {
        var over = instrument.Dimension == Quantities.Dimension.Resistance ? book.Unmodelled.OverRange : 0;
        if (shown.Value is not { } value)
        {
            return over > 0 ? Math.Log(over) : LeastLog;
        }

        var (low, high) = Interval(value);
        low = Math.Max(low, 0);
        var (least, most) = (instrument.Least, instrument.Most);
        var decades = Math.Log(most / least);
        var mass = high <= least ? high / least / decades : Math.Log(high / Math.Max(low, least)) / decades;
        return Math.Log(Math.Max(mass * (1 - over), 1e-12));
    }

    private double Open(Shown shown)
    {
        var (median, spread) = (book.Wire.OpenOhms.Median, book.Wire.OpenOhms.LogSpread);
        if (shown.Value is not { } value)
        {
            return Normal.LogCdfInterval(Math.Log(instrument.Most / median) / spread, double.PositiveInfinity);
        }

        var (low, high) = Interval(value);
        return Math.Max(LeastLog, Normal.LogCdfInterval(Math.Log(Math.Max(low, 1e-9) / median) / spread, Math.Log(high / median) / spread));
    }

    private double Mass(Quantity value, double sigma, double mean)
    {
        var (low, high) = Interval(value);
        // A display at its first step takes in all that is below it.
        var below = low <= 0 ? double.NegativeInfinity : (low - mean) / sigma;
        return Math.Max(LeastLog, Normal.LogCdfInterval(below, (high - mean) / sigma));
    }

    private (double Low, double High) Interval(Quantity value)
    {
        var half = Math.Max(instrument.Step, DisplayStep.Si(value)) / 2;
        return (value.Si - half, value.Si + half);
    }
}
