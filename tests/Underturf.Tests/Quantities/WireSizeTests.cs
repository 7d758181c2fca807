using Underturf.Quantities;

namespace Underturf.Tests.Quantities;

public sealed class WireSizeTests
{
    [Fact]
    public void Every_gauge_number_reads_back()
    {
        for (var number = 0; number <= 40; number++)
        {
            var size = WireSize.FromAwg(number);
            Assert.Equal(number, size.Awg, 1e-11);
            Assert.Equal($"{number} AWG", size.ToString());
            Assert.Equal(size, WireSize.Parse(size.ToString()).Value);
        }
    }

    [Theory]
    [InlineData("18 AWG", 0.8231e-6)]
    [InlineData("18awg", 0.8231e-6)]
    [InlineData("18 ga", 0.8231e-6)]
    [InlineData("18 gauge", 0.8231e-6)]
    [InlineData("1.5 mm2", 1.5e-6)]
    [InlineData(" 1.5mm² ", 1.5e-6)]
    public void A_size_is_read_by_number_or_by_area(string text, double squareMetres)
    {
        Assert.Equal(squareMetres, WireSize.Parse(text).Value.AreaSquareMetres, 1e-4 * squareMetres);
    }

    [Theory]
    [InlineData("18")]
    [InlineData("AWG")]
    [InlineData("-1 AWG")]
    [InlineData("41 AWG")]
    [InlineData("NaN AWG")]
    [InlineData("0 mm2")]
    [InlineData("1e9 mm2")]
    [InlineData("eighteen AWG")]
    public void What_is_no_size_is_named_with_a_remedy(string text)
    {
        var problem = WireSize.Parse(text).Problem!;

        Assert.Equal($"'{text}'", problem.Place);
        Assert.Contains("18 AWG", problem.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("18 AWG", "18 AWG", "0.82 mm2")]
    [InlineData("1.5 mm2", "1.5 mm2", "1.5 mm2")]
    [InlineData("blue", "blue", "blue")]
    public void A_size_is_told_in_the_units_of_the_property(string written, string us, string si)
    {
        Assert.Equal(us, WireSize.Say(written, usUnits: true));
        Assert.Equal(si, WireSize.Say(written, usUnits: false));
    }
}
