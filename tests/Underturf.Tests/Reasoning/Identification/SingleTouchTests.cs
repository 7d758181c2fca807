using Underturf.Numerics;
using Underturf.Reasoning.Identification;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.Identification;

/// <summary>Single touches that never err, against the fewest that can do (exact dynamic programming) and against the information that is asked for.</summary>
public sealed class SingleTouchTests
{
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void Small_bundles_take_as_few_touches_as_any_policy(int ends) =>
        Assert.Equal(new TouchOptimum(ends).Expected(), Expected(Free(ends), 1), 1e-9);

    [Theory]
    [InlineData(5)]
    [InlineData(9)]
    [InlineData(14)]
    [InlineData(20)]
    public void Bundles_take_three_in_a_hundred_more_than_their_information_at_most(int ends)
    {
        var chance = new SeededGenerator(61);
        var touches = Enumerable.Range(0, 8).Average(_ => Played(ends, chance));
        var bits = Enumerable.Range(2, ends - 1).Sum(k => Math.Log2(k));
        Assert.True(touches <= 1.03 * bits, $"{touches} touches for {bits} bits");
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

    /// <summary>Both answers followed to the end.</summary>
    private static double Expected(bool[,] may, double share)
    {
        var shares = Shares(may);
        if (TouchChoice.Best(shares) is not var (end, put))
        {
            return 0;
        }

        var yes = Enumerable.Range(0, put.Length).Where(w => put[w]).Sum(w => shares[end, w]);
        return share + Expected(After(may, end, put, true), share * yes) + Expected(After(may, end, put, false), share * (1 - yes));
    }

    private static double Played(int ends, SeededGenerator chance)
    {
        var truth = Enumerable.Range(0, ends).OrderBy(_ => chance.NextUInt64()).ToArray();
        var (may, touches) = (Free(ends), 0);
        while (TouchChoice.Best(Shares(may)) is var (end, put))
        {
            may = After(may, end, put, put[truth[end]]);
            touches++;
        }

        return touches;
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
