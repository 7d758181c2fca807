using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

/// <summary>Sparse symmetric systems against dense elimination and against their own equations. All values invented.</summary>
public sealed class SparseFactorTests
{
    [Fact]
    public void Solutions_are_those_of_dense_elimination_whatever_the_entries_are()
    {
        var random = new SeededGenerator(17);
        for (var trial = 0; trial < 300; trial++)
        {
            var size = 1 + random.NextInt(40);
            var matrix = SparseMatrix.Random(random, size, random.NextInt(4 * size));
            double[] right = [.. Enumerable.Range(0, size).Select(_ => random.NextNormal())];
            var dense = matrix.SolveDense(right);
            var sparse = matrix.Solve(new SparseFactor(matrix.Pattern()), right);
            Assert.All(Enumerable.Range(0, size), k => Assert.Equal(dense[k], sparse[k], 1e-9 * (1 + Math.Abs(dense[k]))));
        }
    }

    [Fact]
    public void One_factor_serves_other_values_and_more_right_hand_sides()
    {
        var random = new SeededGenerator(23);
        var matrix = SparseMatrix.Grid(random, 9, 11);
        var factor = new SparseFactor(matrix.Pattern());
        for (var round = 0; round < 3; round++)
        {
            double[] right = [.. Enumerable.Range(0, matrix.Size).Select(_ => random.NextNormal())];
            Assert.InRange(matrix.Residual(matrix.Solve(factor, right), right), 0, 1e-10);
            matrix = matrix.WithOtherValues(random);
        }
    }

    [Fact]
    public void Entries_ten_orders_of_magnitude_apart_keep_their_equations()
    {
        var random = new SeededGenerator(29);
        var matrix = SparseMatrix.Grid(random, 30, 30, spreadDecades: 10);
        double[] right = [.. Enumerable.Range(0, matrix.Size).Select(_ => random.NextNormal())];
        Assert.InRange(matrix.Residual(matrix.Solve(new SparseFactor(matrix.Pattern()), right), right), 0, 1e-5);
    }

    [Fact]
    public void Conductances_eighteen_orders_of_magnitude_apart_keep_their_digits_where_nothing_is_subtracted()
    {
        // A chain to ground, 1e9 and 1e-9 by turns: one ampere into its end stands on the sum of what it passes, exactly.
        var size = 41;
        int[] nodes = [.. Enumerable.Range(1, size - 1)];
        double[] conductance = [.. nodes.Select(n => n % 2 == 0 ? 1e9 : 1e-9)];
        var pattern = SparsePattern.For(size, [.. nodes.Select(n => n - 1)], nodes);
        var factor = new SparseFactor(pattern);
        for (var e = 0; e < conductance.Length; e++)
        {
            factor.Values[pattern.PairAt[e]] = -conductance[e];
        }

        double[] ground = [1e-9, .. nodes.Select(_ => 0.0)];
        Assert.True(factor.FactorGrounded(ground));
        double[] x = [.. nodes.Select(_ => 0.0), 1];
        factor.Solve(x);
        var exact = 1e9 + conductance.Sum(g => 1 / g);
        Assert.Equal(exact, x[^1], 1e-13 * exact);
        Assert.False(factor.FactorGrounded(new double[size]));
    }

    [Fact]
    public void The_grounded_factor_solves_as_the_other_does()
    {
        var random = new SeededGenerator(43);
        var matrix = SparseMatrix.Grid(random, 12, 15);
        double[] right = [.. Enumerable.Range(0, matrix.Size).Select(_ => random.NextNormal())];
        var (pattern, other) = (matrix.Pattern(), matrix.Solve(new SparseFactor(matrix.Pattern()), right));
        var factor = new SparseFactor(pattern);
        for (var e = 0; e < matrix.Entries.Length; e++)
        {
            factor.Values[pattern.PairAt[e]] = matrix.Entries[e];
        }

        Assert.True(factor.FactorGrounded([.. right.Select(_ => 0.01)]));
        factor.Solve(right);
        Assert.All(Enumerable.Range(0, matrix.Size), k => Assert.Equal(other[k], right[k], 1e-9));
    }

    [Fact]
    public void A_matrix_that_is_not_positive_definite_is_refused()
    {
        var pattern = SparsePattern.For(2, [0], [1]);
        var factor = new SparseFactor(pattern);
        factor.Values[pattern.DiagonalAt[0]] = factor.Values[pattern.DiagonalAt[1]] = 1;
        factor.Values[pattern.PairAt[0]] = 1;
        Assert.False(factor.Factor());
    }

    [Fact]
    public void A_tree_and_a_star_make_no_fill()
    {
        var random = new SeededGenerator(31);
        int[] nodes = [.. Enumerable.Range(1, 499)];
        Assert.Equal((2 * 500) - 1, SparsePattern.For(500, [.. nodes.Select(n => random.NextInt(n))], nodes).FactorEntries);
        Assert.Equal((2 * 500) - 1, SparsePattern.For(500, [.. nodes.Select(_ => 0)], nodes).FactorEntries);
    }

    [Fact]
    public void The_factor_of_a_planar_network_grows_little_faster_than_the_network()
    {
        // A grid of n nodes cannot do with less than about n log n (George, SIAM Journal on Numerical Analysis 10(2), 1973, from memory).
        var random = new SeededGenerator(37);
        var small = SparseMatrix.Grid(random, 20, 25).Pattern().ValueCount / 500.0;
        var large = SparseMatrix.Grid(random, 100, 100).Pattern().ValueCount / 10_000.0;
        Assert.InRange(large / small, 1, 2.5);
        Assert.InRange(large, 0, 31);
    }

    [Fact]
    public void The_same_network_always_gets_the_same_order()
    {
        var once = SparseMatrix.Grid(new SeededGenerator(41), 13, 17).Pattern();
        var again = SparseMatrix.Grid(new SeededGenerator(41), 13, 17).Pattern();
        Assert.Equal(once.DiagonalAt.ToArray(), again.DiagonalAt.ToArray());
        Assert.Equal(once.PairAt.ToArray(), again.PairAt.ToArray());
    }

    [Fact]
    public void Nothing_to_solve_is_no_trouble()
    {
        var factor = new SparseFactor(SparsePattern.For(0, [], []));
        Assert.True(factor.Factor());
        factor.Solve([]);
    }
}
