using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// The chance of a display: a reading is one of the finitely many things an instrument can show, over-range included, so that every
/// explanation, "something not modelled" too, spreads one unit of probability over the same displays.
/// </summary>
internal sealed class Display
{
    /// <summary>A guard for the arithmetic: below this no chance matters.</summary>
    private const double LeastLog = -600;

    private readonly InstrumentPractice instrument;
    private readonly PracticeBook book;
    private readonly bool overRange;
    private readonly double low;
    private readonly double high;
    private double? ceiling;

    public Display(InstrumentPractice instrument, PracticeBook book, Shown shown)
    {
        this.instrument = instrument;
        this.book = book;
        overRange = shown.IsOverRange;
        if (shown.Value is { } value)
        {
            var half = Math.Max(instrument.Step, DisplayStep.Si(value)) / 2;
            (low, high) = (value.Si - half, value.Si + half);
        }
    }

    public InstrumentPractice Instrument => instrument;

    public double LogChance(Prediction prediction, Outlook outlook) => prediction.IsOpen ? Open() : LogChance(Expect(instrument, prediction, outlook));

    /// <summary>Where a path is closed and its reading is normal about a mean.</summary>
    public double LogChance((double Mean, double Sigma) expected)
    {
        var (mean, sigma) = expected;
        if (IsWide(mean, sigma))
        {
            return Logarithmic(mean, sigma / mean);
        }

        return !overRange
            ? Mass(sigma, mean)
            : Math.Max(LeastLog, Normal.LogCdfInterval((instrument.Most - mean) / sigma, double.PositiveInfinity));
    }

    /// <summary>A spread of the order of the mean is one of the logarithm.</summary>
    public bool IsWide(double mean, double sigma) => sigma > Wide * mean && mean > instrument.Least;

    /// <summary>A bound of the logarithm of the chance for every circuit of at most so many ohms (or volts, amperes) whose spread is at most so large.</summary>
    public double MostLogChance(double mean, double sigma) => sigma > Wide * mean ? 0
        : overRange ? Normal.LogCdf((mean - instrument.Most) / sigma)
        : low > mean ? Normal.LogCdf((mean - low) / sigma)
        : 0;

    /// <summary>
    /// A bound of the logarithm of the chance for every circuit, and for anything. The spread is at least the instrument's own error, so that the density at the
    /// display is no more than that of a normal one about it; for means below half of what is shown, no more than exp(-1/2) over the distance times sqrt(2 pi), for which
    /// the spread is as large as the distance. Where the logarithm is normal its spread is at least <see cref="Wide"/>.
    /// </summary>
    public double LogCeiling => ceiling ??= overRange || low <= 0 ? 0 : Math.Min(0, Math.Max(LogChanceUnmodelled(), Math.Log(Math.Max(Linear, OfLogarithm))));

    private double Linear => (high - low) / (Math.Sqrt(2 * Math.PI) * Math.Min(Math.Sqrt(instrument.OwnVariance(low / 2)), low / 2 * Math.Sqrt(Math.E)));

    private double OfLogarithm => Math.Log(high / low) / (Math.Sqrt(2 * Math.PI) * Math.Min(Wide, book.Wire.OpenOhms.LogSpread));

    /// <summary>Mean of what is displayed, and its standard deviation: what the circuit leaves open and the instrument's own error.</summary>
    public static (double Mean, double Sigma) Expect(InstrumentPractice instrument, Prediction prediction, Outlook outlook)
    {
        var mean = outlook.Mean(prediction);
        return (mean, Math.Sqrt(outlook.Variance(prediction) + instrument.OwnVariance(mean)));
    }

    /// <summary>Spread evenly over the decades that the instrument can show.</summary>
    public double LogChanceUnmodelled()
    {
        var over = instrument.Dimension == Quantities.Dimension.Resistance ? book.Unmodelled.OverRange : 0;
        if (overRange)
        {
            return over > 0 ? Math.Log(over) : LeastLog;
        }

        var (least, most) = (instrument.Least, instrument.Most);
        var decades = Math.Log(most / least);
        var mass = high <= least ? high / least / decades : Math.Log(high / Math.Max(low, least)) / decades;
        return Math.Log(Math.Max(mass * (1 - over), 1e-12));
    }

    /// <summary>Where it is of something that was read before: both err as the instrument does.</summary>
    public double LogChanceOfAnother(Shown before) => before.Value is { } value
        ? LogChance((value.Si, Math.Sqrt(2 * instrument.OwnVariance(value.Si))))
        : overRange ? 0 : LeastLog;

    private double Open() => Logarithmic(book.Wire.OpenOhms.Median, book.Wire.OpenOhms.LogSpread);

    /// <summary>A quantity whose spread is of the order of itself is never negative: its logarithm is what spreads.</summary>
    private double Logarithmic(double median, double spread)
    {
        return overRange
            ? Normal.LogCdfInterval(Math.Log(instrument.Most / median) / spread, double.PositiveInfinity)
            : Math.Max(LeastLog, Normal.LogCdfInterval(Math.Log(Math.Max(low, 1e-9) / median) / spread, Math.Log(Math.Max(high, 2e-9) / median) / spread));
    }

    /// <summary>A display at its first step takes in all that is below it.</summary>
    private double Mass(double sigma, double mean)
    {
        var (below, above) = (low <= 0 ? double.NegativeInfinity : (low - mean) / sigma, (high - mean) / sigma);
        return below > Hopeless || above < -Hopeless ? LeastLog : Math.Max(LeastLog, Normal.LogCdfInterval(below, above));
    }

    /// <summary>Share of the mean above which a spread is taken as one of the logarithm.</summary>
    private const double Wide = 0.3;

    /// <summary>Standard deviations beyond which a normal tail lies below the guard: 35^2 / 2 is more than 600.</summary>
    private const double Hopeless = 35;
}
