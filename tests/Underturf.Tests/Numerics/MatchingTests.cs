using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

/// <summary>Shares of a random matching. Numbers made up; expected values are sums over all matchings.</summary>
public sealed class MatchingTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 3)]
    [InlineData(4, 6)]
    [InlineData(5, 2)]
    public void Shares_are_those_of_all_matchings_one_by_one(int rows, int columns)
    {
        for (var seed = 1UL; seed <= 20; seed++)
        {
            var weights = Random(rows, columns, seed, least: 0);
            Same(weights, OneByOne(weights), 1e-9);
        }
    }

    [Theory]
    [InlineData(3, 3)]
    [InlineData(4, 6)]
    [InlineData(5, 2)]
    public void The_sum_over_all_matchings_is_known_and_estimated_well_enough_to_compare(int rows, int columns)
    {
        for (var seed = 1UL; seed <= 20; seed++)
        {
            var weights = Random(rows, columns, seed, least: 0.05);
            var exact = Math.Log(Total(weights, -1, -1));
            Assert.Equal(exact, MatchingMarginals.Of(weights, 1).LogSum, 1e-6);
            Assert.Equal(exact, MatchingMarginals.Balanced(weights, 60).LogSum, 0.5);
        }
    }

    [Fact]
    public void Rows_that_are_alike_are_counted_and_not_told_apart()
    {
        var weights = new MatchingWeights(30, 40);
        for (var i = 0; i < 30; i++)
        {
            for (var j = 0; j < 40; j++)
            {
                weights[i, j] = i < 12 ? 1 + (j % 3) : 0.5;
            }
        }

        var shares = MatchingMarginals.Of(weights, 1);
        Assert.True(shares.IsExact);
        Assert.Equal(shares[0, 5], shares[11, 5], 1e-12);
        Assert.True(shares[0, 5] > shares[20, 5]);
        Assert.All(Enumerable.Range(0, 30), i => Assert.Equal(1, Sum(shares, i), 1e-9));
    }

    [Fact]
    public void What_is_too_large_is_sampled_to_two_in_a_hundred()
    {
        var weights = Random(15, 24, 7, least: 0.05);
        var sampled = MatchingMarginals.Of(weights, 3);
        Assert.False(sampled.IsExact);
        Same(weights, BySubsets(weights), 0.02);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(3, 9)]
    public void Bundles_too_large_to_be_summed_are_compared_by_an_estimate_within_one_in_ten(int one, int other)
    {
        // As a lead on the one row or on the other: it takes one of two columns, and the other row neither.
        MatchingWeights Lead(int on, int off)
        {
            var weights = Random(15, 24, 7, least: 0.05);
            weights.RowAlone(on) = 0;
            for (var j = 0; j < weights.Columns; j++)
            {
                (weights[on, j], weights[off, j]) = j < 2 ? (weights[on, j], 0.0) : (0.0, weights[off, j]);
            }

            return weights;
        }

        var (first, second) = (Lead(one, other), Lead(other, one));
        Assert.False(MatchingMarginals.Of(first, 1).IsExact);
        Assert.Equal(Math.Log(Total(first, -1, -1) / Total(second, -1, -1)), MatchingMarginals.Of(first, 1).LogSum - MatchingMarginals.Of(second, 1).LogSum, 0.1);
    }

    [Fact]
    public void A_row_that_can_be_nothing_is_refused()
    {
        var weights = new MatchingWeights(1, 1);
        (weights[0, 0], weights.RowAlone(0)) = (0, 0);
        Assert.Throws<ArgumentException>(() => MatchingMarginals.Of(weights, 1));
    }

    [Fact]
    public void Balanced_shares_add_up_by_rows_and_no_column_is_taken_more_than_once()
    {
        var weights = Random(8, 10, 3, least: 0.01);
        var shares = MatchingBalance.Of(weights, 200);
        Assert.All(Enumerable.Range(0, 8), i => Assert.Equal(1, shares.Skip(i * 11).Take(11).Sum(), 1e-9));
        Assert.All(Enumerable.Range(0, 10), j => Assert.True(Enumerable.Range(0, 8).Sum(i => shares[(i * 11) + j]) < 1 + 1e-6));
    }

    private static MatchingWeights Random(int rows, int columns, ulong seed, double least)
    {
        var (chance, weights) = (new SeededGenerator(seed), new MatchingWeights(rows, columns));
        for (var i = 0; i < rows; i++)
        {
            weights.RowAlone(i) = 0.1 + chance.NextDouble();
            for (var j = 0; j < columns; j++)
            {
                weights[i, j] = chance.NextDouble() is var drawn && drawn < least ? least : drawn * drawn;
            }
        }

        return weights;
    }

    private static void Same(MatchingWeights weights, double[] expected, double tolerance)
    {
        var shares = MatchingMarginals.Of(weights, 5);
        for (var i = 0; i < weights.Rows; i++)
        {
            for (var j = 0; j <= weights.Columns; j++)
            {
                Assert.Equal(expected[(i * (weights.Columns + 1)) + j], shares.Of(i)[j], tolerance);
            }
        }
    }

    private static double Sum(MatchingMarginals shares, int row) => shares.Of(row).ToArray().Sum();

    private static double[] OneByOne(MatchingWeights weights)
    {
        var wide = weights.Columns + 1;
        var (sums, total) = (new double[weights.Rows * wide], 0.0);
        Walk(0, 1, [], new bool[weights.Columns]);
        return [.. sums.Select(s => s / total)];

        void Walk(int row, double product, List<int> taken, bool[] used)
        {
            if (row == weights.Rows)
            {
                total += product;
                taken.Index().ToList().ForEach(t => sums[(t.Index * wide) + t.Item] += product);
                return;
            }

            Walk(row + 1, product * weights.RowAlone(row), [.. taken, weights.Columns], used);
            for (var j = 0; j < weights.Columns; j++)
            {
                if (!used[j])
                {
                    used[j] = true;
                    Walk(row + 1, product * weights[row, j], [.. taken, j], used);
                    used[j] = false;
                }
            }
        }
    }

    /// <summary>Each share by two sums: all matchings, and those in which the row takes the column.</summary>
    private static double[] BySubsets(MatchingWeights weights)
    {
        var wide = weights.Columns + 1;
        var (shares, total) = (new double[weights.Rows * wide], Total(weights, -1, -1));
        for (var i = 0; i < weights.Rows; i++)
        {
            for (var j = 0; j < weights.Columns; j++)
            {
                shares[(i * wide) + j] = weights[i, j] * Total(weights, i, j) / total;
            }

            shares[(i * wide) + weights.Columns] = 1 - shares.Skip(i * wide).Take(weights.Columns).Sum();
        }

        return shares;
    }

    private static double Total(MatchingWeights weights, int row, int column)
    {
        var rows = Enumerable.Range(0, weights.Rows).Where(i => i != row).ToList();
        var sums = new double[1 << rows.Count];
        sums[0] = 1;
        foreach (var j in Enumerable.Range(0, weights.Columns).Where(j => j != column))
        {
            for (var set = sums.Length - 1; set > 0; set--)
            {
                for (var k = 0; k < rows.Count; k++)
                {
                    sums[set] += (set >> k & 1) == 1 ? sums[set & ~(1 << k)] * weights[rows[k], j] : 0;
                }
            }
        }

        return Enumerable.Range(0, sums.Length).Sum(set => sums[set] * Enumerable.Range(0, rows.Count).Where(k => (set >> k & 1) == 0).Aggregate(1.0, (p, k) => p * weights.RowAlone(rows[k])));
    }
}
