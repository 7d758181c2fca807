using Underturf.Papers;
using Underturf.Tests.Planning;

namespace Underturf.Tests.Papers;

public sealed class ReworkPaperTests
{
    private static readonly Lazy<IReadOnlyList<Paper>> Made = new(() => PaperSet.Make(new SharedGround(40, abandoned: false).Notebook()));

    [Fact]
    public void The_proposal_has_what_is_shared_the_ways_with_their_prices_the_sum_the_steps_and_the_cautions()
    {
        var text = PdfText.All(Made.Value.Bytes("rework.pdf"));
        Assert.All(
            ["1 of 1 valves", "Station 1: 2 valves on one conductor", "Before", "After", "Lay a new conductor", "What it comes to", "Together", "Step by step", "Check station 3 alone", "Utility marks first", "Local codes and licensed practice prevail"],
            part => Assert.Contains(part, text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_numbers_have_every_terminal_and_what_an_old_number_means()
    {
        var text = PdfText.All(Made.Value.Bytes("numbers.pdf"));
        Assert.All(["Old numbers and new ones", "Side bed", "to be done", "Back lawn", "part of 1", "Local codes and licensed practice prevail"], part => Assert.Contains(part, text, StringComparison.Ordinal));
    }
}
