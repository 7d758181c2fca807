using System.Numerics;
using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

/// <summary>Small systems, real and complex, against their own equations. All values invented.</summary>
public sealed class DenseFactorTests
{
    [Fact]
    public void Solutions_of_real_systems_fulfil_the_equations() => Check<double>(random => random.NextNormal(), Math.Abs);

    [Fact]
    public void Solutions_of_complex_systems_fulfil_the_equations() =>
        Check(random => new Complex(random.NextNormal(), random.NextNormal()), Complex.Abs);

    [Fact]
    public void Equations_that_repeat_each_other_have_no_pivot_left()
    {
        var factor = new DenseFactor<double>(2);
        (factor[0, 0], factor[0, 1], factor[1, 0], factor[1, 1]) = (1, 2, 2, 4);
        Assert.Equal(0, factor.Factor());
    }

    [Fact]
    public void A_zero_on_the_diagonal_is_no_obstacle()
    {
        var factor = new DenseFactor<double>(2);
        (factor[0, 1], factor[1, 0]) = (2, 4);
        Assert.Equal(2, factor.Factor());
        double[] x = [6, 8];
        factor.Solve(x);
        Assert.Equal([2, 3], x);
    }

    private static void Check<T>(Func<SeededGenerator, T> draw, Func<T, double> magnitude)
        where T : struct, INumberBase<T>
    {
        var random = new SeededGenerator(91);
        for (var size = 1; size <= 12; size++)
        {
            var (factor, matrix) = (new DenseFactor<T>(size), new T[size, size]);
            T[] right = [.. Enumerable.Range(0, size).Select(_ => draw(random))];
            for (var at = 0; at < size * size; at++)
            {
                factor[at / size, at % size] = matrix[at / size, at % size] = draw(random);
            }

            Assert.True(factor.Factor() > 0);
            T[] x = [.. right];
            factor.Solve(x);
            for (var row = 0; row < size; row++)
            {
                var sum = Enumerable.Range(0, size).Aggregate(-right[row], (s, column) => s + (matrix[row, column] * x[column]));
                Assert.InRange(magnitude(sum), 0, 1e-9);
            }
        }
    }
}
