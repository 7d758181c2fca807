using System.Text;
using System.Xml.Linq;
using Underturf.FieldLog;
using Underturf.Papers;

namespace Underturf.Tests.Papers;

public sealed class PlanTests
{
    [Fact]
    public void The_demos_plan_shows_boxes_scale_north_and_the_places_under_suspicion()
    {
        var plan = Parse(Worlds.DemoPapers);
        var text = plan.Root!.Value;
        Assert.Contains("box 8", text, StringComparison.Ordinal);
        Assert.Matches(@"\d+ ft", text);
        Assert.NotEmpty(Of(plan, "north"));
        Assert.NotEmpty(Of(plan, "suspect"));
        Assert.NotNull(plan.Root.Attribute("viewBox"));
    }

    [Fact]
    public void A_property_in_metres_has_its_scale_in_metres() =>
        Assert.Matches(@"\d+ m$", Of(Parse(PaperSet.Make(Worlds.Of([Worlds.Property("Made up", "si"), .. Worlds.Stations(2)]))), "scale").Single().Value);

    [Fact]
    public void A_property_without_positions_says_so() =>
        Assert.Contains("Nothing has a position yet", Parse(PaperSet.Make(Worlds.Of(Worlds.Property("Made up")))).Root!.Value, StringComparison.Ordinal);

    [Fact]
    public void One_point_alone_is_drawn_in_the_middle()
    {
        var plan = Parse(PaperSet.Make(Worlds.Of(Worlds.Property("Made up"), new BoxFact { Id = "b", Position = new Position(12, 7) })));
        var box = Of(plan, "box").First().Elements().First();
        Assert.Equal(PlanFrame.MapLeft + (PlanFrame.MapWidth / 2) - 8, (double)box.Attribute("x")!, 0.01);
    }

    [Fact]
    public void A_position_with_a_slipped_decimal_point_is_named_and_does_not_shrink_the_rest()
    {
        var plan = Parse(PaperSet.Make(Worlds.Of(
        [
            Worlds.Property("Made up"), .. Worlds.Stations(2),
            new BoxFact { Id = "far", Label = "box 9", Position = new Position(9e4, 3) },
        ])));
        Assert.Contains("Too far off to draw: box 9.", plan.Root!.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", plan.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", plan.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1e300, -1e300)]
    [InlineData(double.NaN, 0)]
    [InlineData(double.PositiveInfinity, 0)]
    public void A_position_that_is_nowhere_on_earth_is_never_near(double eastMetres, double northMetres) =>
        Assert.False(Nearness.Of([new Position(0, 0), new Position(eastMetres, northMetres)]).Holds(new Position(eastMetres, northMetres)));

    [Fact]
    public void Labels_of_a_crowded_place_do_not_cover_each_other()
    {
        var placer = new LabelPlacer(PlanFrame.Of([new Position(0, 0), new Position(100, 100)]));
        var boxes = Enumerable.Range(0, 20).Select(i => placer.Place(500 + i, 400, 9, 80, 29)).ToList();
        Assert.All(boxes.Index(), a => Assert.All(boxes.Index().Where(b => b.Index != a.Index), b => Assert.Equal(0, a.Item.Overlap(b.Item))));
    }

    private static XDocument Parse(IReadOnlyList<Paper> papers) => XDocument.Parse(Encoding.UTF8.GetString(papers.Bytes("plan.svg").Span));

    private static IEnumerable<XElement> Of(XDocument plan, string kind) => plan.Descendants().Where(e => (string?)e.Attribute("class") == kind);
}
