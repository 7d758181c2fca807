using Underturf.Numerics;

namespace Underturf.Reasoning.Water;

/// <summary>Flows over which an unknown amount is summed, evenly spaced in their logarithm; the first place is no flow.</summary>
internal static class AmountGrid
{
    public const int Count = 181;

    /// <summary>m3/s: less than any meter shows, and more than any garden draws.</summary>
    private const double Least = 1e-6;

    private const double Most = 1e-2;

    private static readonly double Step = Math.Log(Most / Least) / (Count - 2);

    /// <summary>Flow at a place.</summary>
    public static double At(int place) => place == 0 ? 0 : Least * Math.Exp(Step * (place - 1));

    /// <summary>A flow within what a place above the first stands for: 0 at its lower end, 1 at its upper.</summary>
    public static double Between(int place, double share) => At(place) * Math.Exp(Step * (share - 0.5));

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
