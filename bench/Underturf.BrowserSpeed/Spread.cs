using System.Globalization;

namespace Underturf.Benchmarks;

/// <summary>How a few measured values are told: the median, and the lowest and highest.</summary>
internal static class Spread
{
    public static string Of(IReadOnlyCollection<double> values) =>
        string.Create(CultureInfo.InvariantCulture, $"{At(values, 0.5):F2} ({values.Min():F2} to {values.Max():F2})");

    /// <summary>The value that a share of them does not exceed.</summary>
    public static double At(IReadOnlyCollection<double> values, double share) => values.Order().ElementAt((int)Math.Min(values.Count - 1, share * values.Count));
}
