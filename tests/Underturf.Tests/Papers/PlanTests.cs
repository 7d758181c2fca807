using System.Text;
using System.Xml.Linq;
using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Quantities;
using Underturf.Tests.Reasoning.Water;

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
    public void Ties_are_drawn_to_scale_and_listed_and_a_thing_without_a_place_lies_on_a_circle()
    {
        var plan = Parse(PaperSet.Make(Worlds.Of(
            Worlds.Property("Made up", "si"),
            new GroundFact { Id = "oak", What = "tree", Label = "the oak", Shape = [new Position(0, 0)] },
            new GroundFact { Id = "hall", What = "building", Label = "the hall", Shape = [new Position(30, 0), new Position(40, 0), new Position(40, 10)] },
            new BoxFact { Id = "b7", Label = "7", Position = new Position(3, 4) },
            new BoxFact { Id = "b9", Label = "9" },
            new TieFact { Thing = "b7", Mark = "oak", Distance = Length.FromSi(5) },
            new TieFact { Thing = "b7", Mark = "hall", Corner = new Position(30, 0), Distance = Length.FromSi(27.3), Sure = Grade.Estimated },
            new TieFact { Thing = "b9", Mark = "oak", Distance = Length.FromSi(12) })));
        var ties = Of(plan, "tie").ToList();
        Assert.Equal(["polyline", "polyline", "circle"], ties.Select(tie => tie.Name.LocalName).Take(3));
        // A paragraph breaks its lines where they are full.
        var said = string.Join(' ', plan.Descendants().Where(e => e.Name.LocalName is "text" or "tspan" && !e.HasElements).Select(e => e.Value));
        Assert.All(["box 7: 27.3 m from the south-west corner of the hall", "5.0 m from the oak", "box 9: 12.0 m from the oak"], words => Assert.Contains(words, said, StringComparison.Ordinal));
    }

    [Fact]
    public void Protected_ground_of_a_tree_is_a_ring_to_scale_by_the_local_rule()
    {
        var plan = Parse(PaperSet.Make(Worlds.Of(
            Worlds.Property("Made up", "si"),
            new GroundFact { Id = "oak", What = "tree", Shape = [new Position(0, 0)], Trunk = new Length(0.5) },
            new GroundFact { Id = "palm", What = "tree", Label = "date palm", Shape = [new Position(5, 0)], Trunk = new Length(0.5) },
            new BoxFact { Id = "b", Position = new Position(20, 0) })));
        var ring = Assert.Single(Of(plan, "roots"));
        var (oak, box) = ((double)ring.Attribute("cx")!, (double)Of(plan, "box").First().Elements().First().Attribute("x")! + 8);
        Assert.Equal(9 * (box - oak) / 20, (double)ring.Attribute("r")!, 0.1);
    }

    [Fact]
    public void Isolation_valves_pipes_and_the_point_of_connection_are_drawn_by_their_grades_with_a_legend()
    {
        var plan = Parse(PaperSet.Make(Orchard.Piped()
            .With(new IsolationValveFact { Id = "i2", Sure = Grade.Told })
            .With(new PipeFact { Id = "tee-i1", From = "tee", To = "i1", Route = [new Position(20, 20), new Position(24, 15), new Position(20, 10)] }).Notebook()));
        Assert.Equal(3, Of(plan, "isolation-valve").Count());
        Assert.Equal(2, Of(plan, "point-of-connection").Count());
        Assert.Equal((1 + 1, 6), (Of(plan, "pipe Measured").Count(), Of(plan, "pipe Inferred").Count()));
        Assert.All(["isolation valve low", "street meter", "point of connection", "pipe: broad"], words => Assert.Contains(words, plan.Root!.Value, StringComparison.Ordinal));
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
        Assert.False(Underturf.Property.Nearness.Of([new Position(0, 0), new Position(eastMetres, northMetres)]).Holds(new Position(eastMetres, northMetres)));

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
