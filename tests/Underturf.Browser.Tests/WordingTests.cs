using Underturf.FieldApp;

namespace Underturf.Browser;

public sealed class WordingTests
{
    [Theory]
    [InlineData(0, "<1 %")]
    [InlineData(0.006, "1 %")]
    [InlineData(0.623, "62 %")]
    [InlineData(1, ">99 %")]
    public void A_probability_is_a_whole_per_cent_and_never_certain(double probability, string said) =>
        Assert.Equal(said, Wording.Percent(probability));

    [Theory]
    [InlineData(0.02, "")]
    [InlineData(2.3, "200 to 1")]
    [InlineData(-0.7, "5 to 1")]
    [InlineData(12, "over 1000 to 1")]
    public void A_weight_of_evidence_is_said_as_odds_whichever_way_it_speaks(double weight, string said) => Assert.Equal(said, Wording.Odds(weight));

    [Theory]
    [InlineData(0.2, "<1 min")]
    [InlineData(12.4, "12 min")]
    public void Minutes_are_whole_and_small_ones_are_not_said_to_be_none(double minutes, string said) =>
        Assert.Equal(said, Wording.Minutes(minutes));
}
