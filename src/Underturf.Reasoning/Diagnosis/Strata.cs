using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Cuts a log-normal amount into strata of equal probability, each with its middle and the spread left within it, so that an unknown
/// amount is integrated by a sum that stays smooth when a reading is sharper than a stratum.
/// </summary>
internal static class Strata
{
    /// <summary>Of a fault.</summary>
    public const int Count = 24;

    /// <summary>Of what asks for nothing: how much it is does not matter as long as it is there, and each amount that fits is carried along.</summary>
    private const int Few = 8;

    /// <summary>Middle and spread of each stratum of the standard normal distribution.</summary>
    private static readonly (double Middle, double Spread)[] fine = Standard(Count), coarse = Standard(Few);

    public static int CountOf(FaultPractice fault) => Of(fault).Length;

    /// <summary>The middle of a stratum and the standard deviation of the logarithm within it; the lowest is 0.</summary>
    public static (double Amount, double LogSpread) Of(FaultPractice fault, Spread spread, int index)
    {
        var (middle, within) = Of(fault)[index];
        return (spread.Median * Math.Exp(spread.LogSpread * middle), spread.LogSpread * within);
    }

    private static (double Middle, double Spread)[] Of(FaultPractice fault) => fault.AsksNothing ? coarse : fine;

    private static (double Middle, double Spread)[] Standard(int count) => [.. Enumerable.Range(0, count).Select(i => Standard(i, count))];

    /// <summary>The outermost strata reach to infinity; a tenth of a stratum stands for their end.</summary>
    private static (double Middle, double Spread) Standard(int i, int count)
    {
        var low = Normal.Quantile(Math.Max(i, 0.1) / count);
        var high = Normal.Quantile(Math.Min(i + 1, count - 0.1) / count);
        return (Normal.Quantile((i + 0.5) / count), (high - low) / Math.Sqrt(12));
    }
}
