namespace Underturf.Numerics;

/// <summary>
/// The standard normal distribution. Relative error of <see cref="Density"/>, <see cref="Cdf"/> and <see cref="Upper"/> below 2e-15 down to
/// the smallest double; of the logarithms a few units in the last place.
/// </summary>
public static class Normal
{
    private const double LogRootTwoPi = 0.91893853320467274178;
    private const double LogTwo = 0.69314718055994530942;

    public static double Density(double x) => HalfSquareExp(x) * 0.39894228040143267794;

    public static double LogDensity(double x) => (-0.5 * x * x) - LogRootTwoPi;

    /// <summary>Probability below x.</summary>
    public static double Cdf(double x) => x > 0 ? 1 - Tail(x) : Tail(-x);

    /// <summary>Probability above x.</summary>
    public static double Upper(double x) => Cdf(-x);

    /// <summary>ln of the probability below x, far into the tail where the probability itself is no double.</summary>
    public static double LogCdf(double x) => x > 0 ? LogMath.LogOnePlus(-Tail(x)) : LogTail(-x);

    /// <summary>
    /// ln of the probability between a and b, relative error of the probability below 1e-13 (beyond |x| = 40, |x|^2 units in the last place)
    /// in both tails and however narrow: a narrow interval is integrated, not subtracted.
    /// </summary>
    /// <param name="a">Lower end, may be negative infinity.</param>
    /// <param name="b">Upper end, not below a; may be positive infinity.</param>
    public static double LogCdfInterval(double a, double b)
    {
        if (!(a <= b))
        {
            throw new ArgumentOutOfRangeException(nameof(b), b, $"Must not be below the lower end {a}.");
        }

        var half = 0.5 * (b - a);
        var middle = a + half;
        if (half <= 0.5 && Math.Abs(middle) * half <= 1)
        {
            return NarrowInterval.LogMass(middle, half);
        }

        if (a >= 0)
        {
            return LogTail(a) + LogMath.LogOneMinusExp(LogTail(b) - LogTail(a));
        }

        return b <= 0
            ? LogTail(-b) + LogMath.LogOneMinusExp(LogTail(-a) - LogTail(-b))
            : LogMath.LogOnePlus(-Tail(-a) - Tail(b));
    }

    /// <summary>The x with the given probability below it; infinite at 0 and 1. Relative error below 1e-14 of x where |x| is not small.</summary>
    public static double Quantile(double probability)
    {
        if (!(probability >= 0 && probability <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "Must be between 0 and 1.");
        }

        return probability > 0.5 ? TailQuantile(1 - probability) : -TailQuantile(probability);
    }

    /// <summary>
    /// Newton on the logarithm of the tail, which is concave, from the bound tail(x) &lt;= exp(-x^2/2)/2: each step stays on one side, and
    /// five or six reach the last digit.
    /// </summary>
    private static double TailQuantile(double tail)
    {
        if (tail == 0)
        {
            return double.PositiveInfinity;
        }

        var log = Math.Log(tail);
        var x = Math.Sqrt(Math.Max(0, -2 * (log + LogTwo)));
        for (var round = 0; round < 20; round++)
        {
            var logTail = LogTail(x);
            var step = (logTail - log) * Math.Exp(logTail - LogDensity(x));
            x += step;
            if (Math.Abs(step) <= 1e-15 * x)
            {
                break;
            }
        }

        return Math.Max(0, x);
    }

    /// <summary>Probability above x, for x not below zero.</summary>
    private static double Tail(double x)
    {
        var t = 2 / (2 + (x * 0.70710678118654752440));
        return double.IsPositiveInfinity(x) ? 0 : 0.5 * t * HalfSquareExp(x) * Math.Exp(ErfcSeries.At(t));
    }

    private static double LogTail(double x)
    {
        var t = 2 / (2 + (x * 0.70710678118654752440));
        return double.IsPositiveInfinity(x) ? double.NegativeInfinity : (-0.5 * x * x) + ErfcSeries.At(t) + Math.Log(t) - LogTwo;
    }

    /// <summary>exp(-x^2/2), with the square split so that its rounding error is not multiplied by x^2.</summary>
    private static double HalfSquareExp(double x)
    {
        var coarse = Math.Round(x * 16) / 16;
        return Math.Abs(x) > 40 ? 0 : Math.Exp(-0.5 * coarse * coarse) * Math.Exp(-0.5 * (x - coarse) * (x + coarse));
    }
}
