using System.Text.Json.Nodes;
using Underturf.Planning.Rework;
using Underturf.Property.Practice;
using Underturf.Tests.Property;

namespace Underturf.Tests.Planning;

/// <summary>A number of the rework that changes no plan has no place in the practice book.</summary>
public sealed class ReworkNumbersTests
{
    [Fact]
    public void A_number_of_the_rework_that_changes_nothing_has_no_place_in_the_book()
    {
        var logs = new[] { 40.0, 260, 420, 700, 1300 }.Select(metres => new SharedGround(metres, abandoned: false)).Append(new SharedGround(40)).ToList();
        Assert.Empty(new IdleNumbers<SharedGround>(logs, (ground, book) => [ReworkJson.Write(ReworkPlan.Of(ground.Notebook(book)))], PracticeBook.Default).Among(BookNumbers.Leaves(BookNumbers.Base()["rework"]!), Changed));
    }

    private static PracticeBook? Changed(string path, double factor) => BookNumbers.Changed(path, leaf => leaf.TryGetValue<int>(out var whole)
        ? JsonValue.Create(Math.Max(1, (int)Math.Round(whole * factor)))
        : JsonValue.Create(leaf.GetValue<double>() * factor));
}
