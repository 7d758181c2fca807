using Underturf.Quantities;

namespace Underturf.Tests.Quantities;

public sealed class OutcomeTests
{
    [Fact]
    public void A_quantity_reads_its_own_dimension_only()
    {
        Assert.Equal(73.152, Read<Length>("240 ft").Value.Metres, 1e-12);
        Assert.Contains("unit of resistance", Read<Resistance>("240 ft").Problem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void To_ask_a_problem_for_its_value_is_a_bug_that_says_the_problem()
    {
        Outcome<int> outcome = new Problem("line 12", "is torn", "Tape it");

        Assert.False(outcome.Succeeded);
        Assert.Contains("line 12: is torn. Tape it.", Assert.Throws<InvalidOperationException>(() => outcome.Value).Message, StringComparison.Ordinal);
    }

    private static Outcome<T> Read<T>(string text)
        where T : struct, IQuantity<T> => T.Parse(text);
}
