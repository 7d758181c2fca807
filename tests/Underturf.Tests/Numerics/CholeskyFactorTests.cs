using CsCheck;
using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

public sealed class CholeskyFactorTests
{
    [Fact]
    public void It_solves_the_equations_of_any_positive_definite_matrix() => Cases().Sample(matrix =>
    {
        var size = (int)Math.Sqrt(matrix.Length);
        double[] wanted = [.. Enumerable.Range(0, size).Select(i => i - 1.5)], x = new double[size];
        for (var i = 0; i < size; i++)
        {
            x[i] = Enumerable.Range(0, size).Sum(j => matrix[(i * size) + j] * wanted[j]);
        }

        CholeskyFactor.Of(matrix, size).Solve(x);
        Assert.All(x.Zip(wanted), pair => Assert.Equal(pair.Second, pair.First, 8));
    }, iter: 200);

    [Fact]
    public void The_diagonal_of_the_inverse_is_that_of_unit_solutions()
    {
        var factor = CholeskyFactor.Of([4, 0, 2, 3], 2);
        Assert.Equal([3.0 / 8, 4.0 / 8], factor.InverseDiagonal(), (a, b) => Math.Abs(a - b) < 1e-12);
    }

    [Fact]
    public void A_matrix_that_is_not_positive_definite_is_refused() => Assert.Throws<ArgumentException>(() => CholeskyFactor.Of([1, 0, 2, 1], 2));

    private static Gen<double[]> Cases() => Gen.Int[1, 6].SelectMany(size => Gen.Double[-2, 2].Array[size * size].Select(a =>
    {
        var matrix = new double[size * size];
        for (var i = 0; i < size * size; i++)
        {
            var (row, column) = (i / size, i % size);
            matrix[i] = Enumerable.Range(0, size).Sum(k => a[(row * size) + k] * a[(column * size) + k]) + (row == column ? 0.5 : 0);
        }

        return matrix;
    }));
}
