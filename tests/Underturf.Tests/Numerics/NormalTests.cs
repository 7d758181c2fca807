using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

/// <summary>Expected values are exact: computed at 60 digits with an arbitrary-precision library, rounded to 20.</summary>
public sealed class NormalTests
{
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(0.5, 0.69146246127401310364)]
    [InlineData(1, 0.84134474606854294859)]
    [InlineData(1.96, 0.97500210485177956586)]
    [InlineData(2, 0.9772498680518207928)]
    [InlineData(5, 0.99999971334842812081)]
    public void The_distribution_function_is_exact_to_rounding(double x, double expected)
    {
        Assert.Equal(expected, Normal.Cdf(x), 3e-16);
        Assert.Equal(expected, Normal.Upper(-x), 3e-16);
    }

    [Theory]
    [InlineData(-10, -53.231285150512470578)]
    [InlineData(-37.5, -707.66898931750719107)]
    [InlineData(-1000, -500007.82669481218431)]
    public void The_logarithm_reaches_far_into_the_tail(double x, double expected)
    {
        Assert.Equal(1, Normal.LogCdf(x) / expected, 1e-15);
        Assert.True(x < -38 || Math.Abs((Normal.Cdf(x) / Math.Exp(expected)) - 1) < 2e-13);
    }

    [Theory]
    [InlineData(0.5, 0.47950012218695346232)]
    [InlineData(1, 0.15729920705028513066)]
    [InlineData(2, 0.0046777349810472658379)]
    [InlineData(3, 0.000022090496998585441373)]
    [InlineData(5, 1.5374597944280348502e-12)]
    public void Twice_the_upper_tail_is_the_complementary_error_function(double z, double erfc)
    {
        Assert.Equal(1, 2 * Normal.Upper(z * Math.Sqrt(2)) / erfc, 1e-14);
    }

    [Theory]
    [InlineData(0.5, 1.5, -1.4199324821566263251)]
    [InlineData(8, 8.5, -35.02879250857974781)]
    [InlineData(-1, 2, -0.20016629432446257995)]
    [InlineData(3, 20, -6.6077262215103495433)]
    [InlineData(37, 37.25, -689.03067811148141049)]
    public void The_mass_of_an_interval_keeps_its_digits_in_both_tails(double a, double b, double expected)
    {
        Assert.Equal(expected, Normal.LogCdfInterval(a, b), Math.Max(3e-14, Math.Abs(expected) * 3e-16));
        Assert.Equal(expected, Normal.LogCdfInterval(-b, -a), Math.Max(3e-14, Math.Abs(expected) * 3e-16));
    }

    [Fact]
    public void A_very_narrow_interval_is_density_times_width()
    {
        const double width = 1e-12;
        var upper = 6.0 + width;
        Assert.Equal(Normal.LogDensity(6) + Math.Log(upper - 6.0), Normal.LogCdfInterval(6, upper), 1e-11);
        Assert.Equal(double.NegativeInfinity, Normal.LogCdfInterval(2, 2));
        Assert.Equal(0, Normal.LogCdfInterval(double.NegativeInfinity, double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal.LogCdfInterval(1, 0));
    }

    [Fact]
    public void Adjoining_intervals_add_up()
    {
        var random = new SeededGenerator(11);
        for (var n = 0; n < 2000; n++)
        {
            var a = 12 * random.NextNormal();
            var b = a + Math.Exp(3 * random.NextNormal());
            var c = b + Math.Exp(3 * random.NextNormal());
            var whole = Normal.LogCdfInterval(a, c);
            var sum = LogMath.LogAdd(Normal.LogCdfInterval(a, b), Normal.LogCdfInterval(b, c));
            Assert.True(Math.Abs(whole - sum) < 1e-13 * Math.Max(1, Math.Abs(whole)), $"{a} {b} {c}: {whole} {sum}");
        }
    }

    [Theory]
    [InlineData(0.975, 1.9599639845400542355)]
    [InlineData(0.999, 3.0902323061678135415)]
    [InlineData(1e-10, -6.3613409024040562047)]
    [InlineData(0.6, 0.2533471031357997988)]
    [InlineData(0.5, 0)]
    public void Quantiles_are_the_exact_ones(double probability, double expected)
    {
        Assert.Equal(expected, Normal.Quantile(probability), 2e-14);
    }

    [Fact]
    public void The_quantile_undoes_the_distribution_function()
    {
        for (var x = -37.0; x < 6; x += 0.37)
        {
            var slack = 4e-16 / Normal.Density(x) * Normal.Cdf(x);
            Assert.Equal(x, Normal.Quantile(Normal.Cdf(x)), 1e-13 + slack);
        }

        Assert.Equal(double.NegativeInfinity, Normal.Quantile(0));
        Assert.Equal(double.PositiveInfinity, Normal.Quantile(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal.Quantile(double.NaN));
    }

    [Fact]
    public void A_log_normal_is_a_normal_of_the_logarithm()
    {
        var length = new LogNormal(120, 0.2);

        Assert.Equal(0.5, length.Cdf(120), 1e-15);
        Assert.Equal(120 * Math.Exp(0.2 * 1.9599639845400542355), length.Quantile(0.975), 1e-11);
        Assert.Equal(120 * Math.Exp(0.02), length.Mean, 1e-12);
        Assert.Equal(0, length.Cdf(-1));
        Assert.Equal(0, length.LogCdfInterval(0, double.PositiveInfinity));
        var step = length.LogCdfInterval(130, 130.001) - Math.Log(0.001);
        Assert.Equal(length.LogDensity(130.0005), step, 1e-9);
    }
}
