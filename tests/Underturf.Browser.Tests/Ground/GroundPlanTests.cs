using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Browser;

/// <summary>What the map is told to draw, from the demo log and from notes behind it. All places are invented.</summary>
public sealed class GroundPlanTests
{
    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    private readonly MemoryDevice device = new();

    [Fact]
    public async Task Everything_with_a_place_in_the_log_is_on_the_plan_in_metres_from_the_datum()
    {
        var plan = Plan(await OpenAsync());
        Assert.Equal(16, plan.Features.Count(f => f.Kind is GroundWords.Box or GroundWords.BoxWithValves));
        Assert.Equal([new Position(95, 45)], plan.Find("b4")!.Shape);
        Assert.Equal((GroundWords.BoxWithValves, "box 4", Grade.Measured, GroundForm.Point), (plan.Find("b4")!.Kind, plan.Find("b4")!.Name, plan.Find("b4")!.Grade, plan.Find("b4")!.Form));
        Assert.Equal((GroundForm.Outline, 4), (plan.Find("chapel")!.Form, plan.Find("chapel")!.Shape.Count));
        Assert.Equal(GroundForm.Line, plan.Find("terraces")!.Form);
        Assert.Equal(("tree", GroundForm.Point), (plan.Find("lime")!.Kind, plan.Find("lime")!.Form));
    }

    [Fact]
    public async Task A_sign_on_the_map_does_not_say_again_what_kind_of_thing_it_is()
    {
        var plan = Plan(await OpenAsync());
        Assert.Equal(["4", "tool shed", "lookout valve", "chapel", ""], new[] { "b4", "c1", "v40", "chapel", "k1" }.Select(id => plan.Find(id)!.Sign));
    }

    [Fact]
    public async Task Protected_ground_of_a_tree_is_a_ring_by_the_local_rule_and_its_card_says_so()
    {
        var log = await OpenAsync();
        await log.NoteAsync(new GroundFact { Id = "elm", What = "tree", Label = "old elm", Shape = [new(30, 20)], Trunk = new Quantities.Length(0.5) });
        var radius = Property.RootFinder.Radius(0.5, PracticeBook.Default.Repairing.Roots);
        var ring = Assert.Single(Plan(log).Roots, r => r.Id == "elm");
        Assert.Equal((GroundForm.Outline, Grade.Inferred, ""), (ring.Form, ring.Grade, ring.Sign));
        Assert.All(ring.Shape, corner => Assert.Equal(radius, corner.DistanceMetresTo(new Position(30, 20)), 1e-9));
        var (_, said) = ThingKnown.Of("elm", log.History).Facts.Single(fact => fact.What == "roots");
        Assert.Contains(GroundWords.Distance(radius, log.History.Facts.UsesUsUnits), said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cable_that_nobody_traced_is_inferred_where_it_was_measured_and_keeps_what_is_less_sure()
    {
        var log = await OpenAsync();
        Assert.Equal((Grade.Inferred, Grade.Told), (Plan(log).Find("k1")!.Grade, Plan(log).Find("k2")!.Grade));
        await log.NoteAsync(new CableFact { Id = "k1", From = "c1", To = "b1", Route = [new(0, 0), new(4, 7), new(12, 8)] });
        Assert.Equal((Grade.Measured, 3), (Plan(log).Find("k1")!.Grade, Plan(log).Find("k1")!.Shape.Count));
    }

    [Theory]
    [InlineData(Grade.Measured)]
    [InlineData(Grade.Told)]
    [InlineData(Grade.Estimated)]
    [InlineData(Grade.Unknown)]
    public async Task A_thing_that_was_moved_lies_where_the_newest_note_puts_it_by_the_grade_of_that_note(Grade grade)
    {
        var log = await OpenAsync();
        await log.NoteAsync(new BoxFact { Id = "b4", Position = new(90.5, 47), Sure = grade });
        var moved = Plan(log).Find("b4")!;
        Assert.Equal((new Position(90.5, 47), grade, "box 4"), (moved.Shape[0], moved.Grade, moved.Name));
    }

    [Fact]
    public async Task A_move_that_is_struck_puts_the_thing_back_and_one_that_is_restored_moves_it_again()
    {
        var log = await OpenAsync();
        var entry = (await log.NoteAsync(new BoxFact { Id = "b4", Position = new(1, 2) })).Value.Id.ToString();
        await log.NoteAsync(new StrikeFact { Entry = entry });
        Assert.Equal(new Position(95, 45), Plan(log).Find("b4")!.Shape[0]);
        await log.NoteAsync(new RestoreFact { Entry = entry });
        Assert.Equal(new Position(1, 2), Plan(log).Find("b4")!.Shape[0]);
    }

    [Fact]
    public async Task What_has_no_place_is_listed_as_not_placed_and_a_valve_in_a_box_is_where_the_box_is()
    {
        var log = await OpenAsync();
        Assert.Empty(Plan(log).Unplaced);
        Assert.Null(Plan(log).Find("v7"));
        await log.NoteAsync(new BoxFact { Id = "b99", Label = "99" });
        await log.NoteAsync(new ValveFact { Id = "v99", Label = "99", Box = "b99" });
        await log.NoteAsync(new ValveFact { Id = "v98", Label = "98" });
        Assert.Equal(["box 99", "valve 98"], Plan(log).Unplaced.Select(thing => thing.Name));
        Assert.Equal("valve 98", Plan(log).NameOf("v98"));
    }

    [Fact]
    public async Task A_slipped_decimal_point_does_not_shrink_the_rest_to_a_dot()
    {
        var log = await OpenAsync();
        var before = Plan(log).Extent();
        await log.NoteAsync(new BoxFact { Id = "b4", Position = new(95000, 45000) });
        Assert.Equal(before, Plan(log).Extent());
        Assert.Equal([new Position(-6, -36), new Position(318, 152)], before);
    }

    [Fact]
    public async Task Two_ids_that_are_one_thing_are_drawn_once()
    {
        var log = await OpenAsync();
        await log.NoteAsync(new BoxFact { Id = "b4-again", Position = new(94, 46) });
        await log.NoteAsync(new SameAsFact { A = "b4", B = "b4-again" });
        Assert.Equal(16, Plan(log).Features.Count(f => f.Kind is GroundWords.Box or GroundWords.BoxWithValves));
        Assert.Equal(new Position(94, 46), Plan(log).Find("b4")!.Shape[0]);
    }

    private async Task<DeviceLog> OpenAsync()
    {
        var log = new DeviceLog(device);
        await log.OpenDeviceAsync();
        await log.TakeInAsync("Served log", demo);
        return log;
    }

    private static GroundPlan Plan(DeviceLog log) => GroundPlan.Of(TiedPlaces.Of(log.History, PracticeBook.Default));
}
