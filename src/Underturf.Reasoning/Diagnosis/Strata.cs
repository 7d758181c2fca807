using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// Cuts a log-normal amount into strata of equal probability, each with its middle and the spread left within it, so that an unknown
/// amount is integrated by a sum that stays smooth when a reading is sharper than a stratum.
/// </summary>
internal static class Strata
{
    private const int Count = 24;

    public static IEnumerable<(double Amount, double LogSpread, double Share)> Of(Spread spread)
    {
        for (var i = 0; i < Count; i++)
        {
            var middle = Normal.Quantile((i + 0.5) / Count);
            // The outermost strata reach to infinity; a tenth of a stratum stands for their end.
            var low = Normal.Quantile(Math.Max(i, 0.1) / Count);
            var high = Normal.Quantile(Math.Min(i + 1, Count - 0.1) / Count);
            yield return (
                spread.Median * Math.Exp(spread.LogSpread * middle),
                spread.LogSpread * (high - low) / Math.Sqrt(12),
                1.0 / Count);
        }
    }
}
