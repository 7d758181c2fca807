namespace Underturf.Reasoning.Water;

/// <summary>What a reading or a look may come to, as chances of a few outcomes.</summary>
internal static class Outcomes
{
    private const int Bins = 14;

    /// <summary>Chances that a reading falls into bins that are evenly spaced in its logarithm, for each of several expectations.</summary>
    public static IReadOnlyList<double[]> OfReading(IReadOnlyList<Amount> expected)
    {
        var like = expected.Select(e => e.Added is null ? e.Base : Amount.Like(e.Mean, e.Spread).Base).ToList();
        var (low, high) = (like.Min(l => Math.Log(l.Median) - (2 * l.LogSpread)), like.Max(l => Math.Log(l.Median) + (2 * l.LogSpread)));
        return [.. like.Select(l => Enumerable.Range(0, Bins).Select(b => l.Cdf(Edge(b + 1)) - l.Cdf(Edge(b))).ToArray())];

        double Edge(int bin) => bin == 0 ? 0 : bin == Bins ? double.PositiveInfinity : Math.Exp(low + ((high - low) * bin / Bins));
    }

    /// <summary>Chances to see each thing first, or none, from the chances of each by itself.</summary>
    public static double[] OfLook(IReadOnlyList<double> seen)
    {
        var (none, sum) = (seen.Aggregate(1.0, (product, s) => product * (1 - s)), seen.Sum());
        return [.. seen.Select(s => (1 - none) * s / Math.Max(sum, 1e-12)), none];
    }
}
