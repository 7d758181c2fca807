using Underturf.Numerics;
using Underturf.Reasoning.Identification;

namespace Underturf.Simulation;

/// <summary>Bundles named by single touches that never err, all ways to match ends and wires as likely beforehand.</summary>
public static class SingleTouches
{
    /// <summary>Expected touches, every answer followed to its end.</summary>
    public static double Expected(int ends) => Follow(Free(ends), 1);

    /// <summary>Mean touches over truths drawn at random.</summary>
    public static double Mean(int ends, int times, ulong seed)
    {
        var chance = new SeededGenerator(seed);
        return Enumerable.Range(0, times).Average(_ => Play(ends, chance));
    }

    private static double Follow(bool[,] may, double share)
    {
        var shares = Shares(may);
        if (TouchChoice.Best(shares) is not var (end, put))
        {
            return 0;
        }

        var yes = Enumerable.Range(0, put.Length).Where(w => put[w]).Sum(w => shares[end, w]);
        return share + Follow(After(may, end, put, true), share * yes) + Follow(After(may, end, put, false), share * (1 - yes));
    }

    private static double Play(int ends, SeededGenerator chance)
    {
        var truth = Enumerable.Range(0, ends).OrderBy(_ => chance.NextUInt64()).ToArray();
        var (may, touches) = (Free(ends), 0);
        while (TouchChoice.Best(Shares(may)) is var (end, put))
        {
            may = After(may, end, put, put[truth[end]]);
            touches++;
        }

        var shares = Shares(may);
        return Enumerable.Range(0, ends).All(e => shares[e, truth[e]] > 0.99) ? touches : throw new InvalidOperationException("An end was named without being known.");
    }

    private static bool[,] Free(int ends)
    {
        var free = new bool[ends, ends];
        for (var e = 0; e < ends; e++)
        {
            for (var w = 0; w < ends; w++)
            {
                free[e, w] = true;
            }
        }

        return free;
    }

    private static MatchingMarginals Shares(bool[,] may)
    {
        var weights = new MatchingWeights(may.GetLength(0), may.GetLength(1));
        for (var e = 0; e < weights.Rows; e++)
        {
            weights.RowAlone(e) = 0;
            for (var w = 0; w < weights.Columns; w++)
            {
                weights[e, w] = may[e, w] ? 1 : 0;
            }
        }

        return MatchingMarginals.Of(weights, 1);
    }

    private static bool[,] After(bool[,] may, int end, bool[] put, bool answered)
    {
        var after = (bool[,])may.Clone();
        for (var w = 0; w < put.Length; w++)
        {
            after[end, w] &= put[w] == answered;
        }

        return after;
    }
}
