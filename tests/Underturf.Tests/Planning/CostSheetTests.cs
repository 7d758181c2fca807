using Underturf.Planning.Rework;

namespace Underturf.Tests.Planning;

public sealed class CostSheetTests
{
    /// <summary>
    /// Worked by hand at 85.00 an hour: 25 min are 35.41666…, so 35.42; 90 min are 127.50 and two connectors at 2.60 are 5.20; 7 min are 9.91666…, so
    /// 9.92. Together 122 min, 172.84 and 5.20: 178.04, which is the sum of what the lines show, not of what was rounded away.
    /// </summary>
    [Fact]
    public void Sums_add_up_to_the_cent()
    {
        var sheet = new CostSheet([CostLine.Of("prove", 25, 85.00m), CostLine.Of("part and join", 90, 85.00m, 2 * 2.60m), CostLine.Of("check", 7, 85.00m)]);
        Assert.Equal([35.42m, 132.70m, 9.92m], sheet.Lines.Select(l => l.Price));
        Assert.Equal((122m, 172.84m, 5.20m, 178.04m), (sheet.Minutes, sheet.Work, sheet.Parts, sheet.Price));
    }

    [Theory]
    [InlineData(double.NaN, 0)]
    [InlineData(1e300, 1e6)]
    [InlineData(-3, 0)]
    [InlineData(73.16, 73.2)]
    public void What_was_computed_becomes_exact_at_one_decimal_whatever_it_was(double computed, double exact) => Assert.Equal((decimal)exact, CostLine.Exact(computed));
}
