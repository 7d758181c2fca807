using Underturf.Numerics;

namespace Underturf.Reasoning.Water;

/// <summary>Flows over which an unknown amount is summed, evenly spaced in their logarithm; the first place is no flow.</summary>
internal static class AmountGrid
{
    public const int Count = 181;

    /// <summary>m3/s: less than any meter shows, and more than any garden draws.</summary>
    private const double Least = 1e-6;

    public const double Most = 1e-2;

    /// <summary>Two amounts together are told apart by so many parts of a place.</summary>
    public const int Parts = 4;

    private static readonly double Step = Math.Log(Most / Least) / (Count - 2);

    /// <summary>Parts by which two amounts are more than the larger, by how many places the other is less.</summary>
    private static readonly int[] More = [.. Enumerable.Range(0, Count).Select(less => (int)Math.Round(Parts * Math.Log(1 + Math.Exp(-less * Step)) / Step))];

    /// <summary>Flow at a place.</summary>
    public static double At(int place) => place == 0 ? 0 : Least * Math.Exp(Step * (place - 1));

    /// <summary>A flow within what a place above the first stands for: 0 at its lower end, 1 at its upper.</summary>
    public static double Between(int place, double share) => At(place) * Math.Exp(Step * (share - 0.5));

    /// <summary>How much more runs so many places further on.</summary>
    public static double Ratio(double places) => Math.Exp(Step * places);

    /// <summary>By how many places a flow is so many times as large.</summary>
    public static int Places(double ratio) => (int)Math.Round(Math.Log(ratio) / Step);

    /// <summary>Flow at a part of a place.</summary>
    public static double AtPart(int part) => part < Parts ? 0 : Least * Math.Exp(Step * (((double)part / Parts) - 1));

    /// <summary>Parts at which two amounts together are: ln(a + b) = ln a + ln(1 + b / a).</summary>
    public static int PartOf(int first, int second) =>
        first == 0 ? second * Parts : second == 0 ? first * Parts : Math.Min((Count * Parts) - 1, (Parts * Math.Max(first, second)) + More[Math.Abs(first - second)]);

    /// <summary>The place nearest to two amounts together.</summary>
    public static int Both(int first, int second) => Math.Min(Count - 1, (PartOf(first, second) + (Parts / 2)) / Parts);

    /// <summary>The place nearest to a flow.</summary>
    public static int Nearest(double flow) => flow < Least / 2 ? 0 : Math.Clamp((int)Math.Round(Math.Log(flow / Least) / Step) + 1, 1, Count - 1);

    /// <summary>Probabilities of the places, for a flow that is positive.</summary>
    public static double[] Weights(LogNormal amount)
    {
        var weights = new double[Count];
        for (var place = 1; place < Count; place++)
        {
            var (low, high) = (At(place) * Math.Exp(-Step / 2), At(place) * Math.Exp(Step / 2));
            weights[place] = amount.Cdf(high) - amount.Cdf(low);
        }

        return weights;
    }
}
