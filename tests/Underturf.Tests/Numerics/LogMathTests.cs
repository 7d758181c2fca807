using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

public sealed class LogMathTests
{
    [Fact]
    public void Sums_of_logarithms_neither_overflow_nor_vanish()
    {
        Assert.Equal(1000 + Math.Log(2), LogMath.LogSumExp([1000, 1000]), 1e-12);
        Assert.Equal(-1000 + Math.Log(3), LogMath.LogSumExp([-1000, -1000, -1000]), 1e-12);
        Assert.Equal(double.NegativeInfinity, LogMath.LogSumExp([]));
        Assert.Equal(5, LogMath.LogSumExp([double.NegativeInfinity, 5]));
        Assert.Equal(double.PositiveInfinity, LogMath.LogSumExp([double.PositiveInfinity, 5]));
        Assert.True(double.IsNaN(LogMath.LogSumExp([1, double.NaN])));
        Assert.Equal(double.NegativeInfinity, LogMath.LogAdd(double.NegativeInfinity, double.NegativeInfinity));
    }

    [Theory]
    [InlineData(1e-20)]
    [InlineData(-1e-20)]
    [InlineData(1e-9)]
    [InlineData(-1e-9)]
    [InlineData(1e-5)]
    public void Small_arguments_keep_their_digits(double x)
    {
        // Exact: Taylor series, the first term left out is below 1e-20 relative.
        Assert.Equal(1, LogMath.LogOnePlus(x) / (x * (1 - (x / 2) + (x * x / 3) - (x * x * x / 4))), 5e-16);
        Assert.Equal(1, LogMath.ExpMinusOne(x) / (x * (1 + (x / 2) + (x * x / 6) + (x * x * x / 24))), 5e-16);
    }

    [Fact]
    public void The_logarithm_of_a_complement_works_from_both_ends()
    {
        Assert.Equal(Math.Log(1e-18), LogMath.LogOneMinusExp(-1e-18), 1e-12);
        Assert.Equal(-Math.Exp(-50), LogMath.LogOneMinusExp(-50), 1e-36);
        Assert.Equal(double.NegativeInfinity, LogMath.LogOneMinusExp(0));
        Assert.Equal(0, LogMath.LogOneMinusExp(double.NegativeInfinity));
    }
}
