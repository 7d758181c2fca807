using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Cuts a log-normal amount into strata of equal probability, each with its middle and the spread left within it, so that an unknown
/// amount is integrated by a sum that stays smooth when a reading is sharper than a stratum.
/// </summary>
internal static class Strata
{
    public const int Count = 24;

    /// <summary>Middle and spread of each stratum of the standard normal distribution.</summary>
    private static readonly (double Middle, double Spread)[] standard = [.. Enumerable.Range(0, Count).Select(Standard)];

    /// <summary>The middle of a stratum and the standard deviation of the logarithm within it; the lowest is 0.</summary>
    public static (double Amount, double LogSpread) Of(Spread spread, int index) =>
        (spread.Median * Math.Exp(spread.LogSpread * standard[index].Middle), spread.LogSpread * standard[index].Spread);

    /// <summary>The outermost strata reach to infinity; a tenth of a stratum stands for their end.</summary>
    private static (double Middle, double Spread) Standard(int i)
    {
        var low = Normal.Quantile(Math.Max(i, 0.1) / Count);
        var high = Normal.Quantile(Math.Min(i + 1, Count - 0.1) / Count);
        return (Normal.Quantile((i + 0.5) / Count), (high - low) / Math.Sqrt(12));
    }
}
