using System.Globalization;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Tests.Quantities;

public sealed class UnitsTests
{
    public static TheoryData<Dimension> Dimensions => [.. Enum.GetValues<Dimension>()];

    /// <summary>Exact by definition (NIST SP 811, appendix B).</summary>
    [Theory]
    [InlineData("240 ft", Dimension.Length, 73.152)]
    [InlineData("1 gpm", Dimension.Flow, 0.003785411784 / 60)]
    [InlineData("31.5 ohm", Dimension.Resistance, 31.5)]
    [InlineData("1 acre", Dimension.Area, 4046.8564224)]
    [InlineData("32 F", Dimension.Temperature, 273.15)]
    [InlineData("-40 C", Dimension.Temperature, 233.15)]
    [InlineData("-40 F", Dimension.Temperature, 233.15)]
    public void Published_conversions_are_met(string text, Dimension dimension, double si)
    {
        Assert.Equal(si, Units.Parse(text, dimension).Value, 1e-13 * si);
    }

    [Fact]
    public void A_psi_is_what_NIST_prints()
    {
        // NIST SP 811, appendix B: 6.894757 E+03 (from memory).
        Assert.Equal(6894.757, Units.From(1, "psi"), 0.0005);
    }

    [Theory]
    [InlineData("240ft")]
    [InlineData("  240   feet ")]
    [InlineData("240'")]
    [InlineData("2.4e2 ft")]
    [InlineData("+240 ft")]
    [InlineData("240\u00a0ft")]
    [InlineData("240\u2032")]
    public void The_same_length_is_read_however_it_is_written(string text)
    {
        Assert.Equal(73.152, Units.Parse(text, Dimension.Length).Value, 1e-12);
    }

    [Theory]
    [InlineData("5 Ω", 5)]
    [InlineData("5 \u2126", 5)]
    [InlineData("5 k\u2126", 5000)]
    [InlineData("5 mohm", 0.005)]
    [InlineData("5 Mohm", 5e6)]
    [InlineData("\u22125 ohm", -5)]
    public void Ohms_are_read_with_either_sign_for_them(string text, double ohms)
    {
        Assert.Equal(ohms, Units.Parse(text, Dimension.Resistance).Value, 1e-12 * Math.Abs(ohms));
    }

    [Theory]
    [InlineData("5/8 in", 0.625)]
    [InlineData("1 1/2 in", 1.5)]
    [InlineData("1-1/4 in", 1.25)]
    [InlineData("3/4\"", 0.75)]
    [InlineData("2 in", 2)]
    public void Sizes_are_read_as_people_write_them(string text, double inches) => Assert.Equal(inches * 0.0254, Units.Parse(text, Dimension.Length).Value, 12);

    [Theory]
    [InlineData("1/0 in", "'/0 in', which is not a unit of length")]
    [InlineData("1 1 1/2 in", "'1 1/2 in', which is not a unit")]
    [InlineData("", "no number")]
    [InlineData("ft", "no number")]
    [InlineData("--5 ft", "no number")]
    [InlineData("1e999 ft", "too large")]
    [InlineData("NaN ft", "no number")]
    [InlineData("5", "no unit")]
    [InlineData("5 furlongs", "'furlongs', which is not a unit of length")]
    [InlineData("5 ohm", "'ohm', which is not a unit of length")]
    [InlineData("1,000 ft", "comma")]
    [InlineData("5 FT", "is not a unit")]
    public void What_is_no_length_is_named_with_a_remedy(string text, string reason)
    {
        var problem = Units.Parse(text, Dimension.Length).Problem!;

        Assert.Equal($"'{text}'", problem.Place);
        Assert.Contains(reason, problem.Reason, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Remedy);
    }

    [Fact]
    public void A_temperature_below_absolute_zero_is_refused()
    {
        Assert.Contains("absolute zero", Units.Parse("-500 F", Dimension.Temperature).Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_message_about_a_huge_text_stays_short()
    {
        Assert.InRange(Units.Parse(new string('x', 10_000_000), Dimension.Length).Problem!.ToString().Length, 1, 300);
        Assert.InRange(Units.Parse("1 " + new string('x', 10_000_000), Dimension.Length).Problem!.ToString().Length, 1, 400);
        Assert.InRange(WireSize.Parse(new string('9', 10_000_000)).Problem!.ToString().Length, 1, 300);
    }

    [Theory]
    [MemberData(nameof(Dimensions))]
    public void Every_unit_reads_back_what_it_shows(Dimension dimension)
    {
        var random = new SeededGenerator(51).Fork(dimension.ToString());
        foreach (var unit in UnitTable.Names(dimension))
        {
            for (var n = 0; n < 200; n++)
            {
                var si = Math.Exp(5 * random.NextNormal());
                var number = Units.In(si, unit);
                var slack = 1e-14 * (si + Units.From(0, unit));
                Assert.Equal(si, Units.From(number, unit), slack);
                var text = string.Create(CultureInfo.InvariantCulture, $"{number:R} {unit}");
                Assert.Equal(Units.From(number, unit), Units.Parse(text, dimension).Value);
            }
        }
    }

    [Fact]
    public void A_machine_that_writes_decimal_commas_reads_the_same()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("") { NumberFormat = new NumberFormatInfo { NumberDecimalSeparator = ",", NumberGroupSeparator = "." } };
            Assert.Equal(31.5, Units.Parse("31.5 ohm", Dimension.Resistance).Value);
            Assert.False(Units.Parse("31,5 ohm", Dimension.Resistance).Succeeded);
            Assert.Equal("1.5 mm2", WireSize.Parse("1.5 mm2").Value.ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void The_page_on_units_is_the_table_of_the_program()
    {
        var rows = UnitTable.Page();
        foreach (var dimension in Enum.GetValues<Dimension>())
        {
            var listed = rows.Where(r => r.Dimension == Units.Name(dimension)).ToArray();
            Assert.Equal(UnitTable.Names(dimension).Order(StringComparer.Ordinal), listed.Select(r => r.Unit).Order(StringComparer.Ordinal));
            Assert.All(listed, r => Assert.Equal(r.Factor * r.Offset, Units.From(0, r.Unit), 1e-13 * r.Factor * r.Offset));
            Assert.All(listed, r => Assert.Equal(r.Factor, Units.From(1, r.Unit) - Units.From(0, r.Unit), 1e-13 * (r.Factor + (r.Factor * r.Offset))));
        }
    }
}
