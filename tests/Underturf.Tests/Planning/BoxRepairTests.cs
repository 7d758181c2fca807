using Underturf.FieldLog;
using Underturf.Planning.Repair;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Tests.Planning;

public sealed class BoxRepairTests
{
    private static readonly ConnectorChoice Connectors = new(PracticeBook.Default.Repairing.Connectors);

    /// <summary>18 AWG is 0.823 mm2, 14 AWG 2.08, 12 AWG 3.31: two thin ones are 1.65, five 4.12, two of 14 and two of 18 are 5.8, three of 12 are 9.9.</summary>
    [Theory]
    [InlineData("18 18", "small", 1)]
    [InlineData("18 18 18 18 18", "middle", 1)]
    [InlineData("14 14 18 18", "middle", 1)]
    [InlineData("12 12 12", "large", 1)]
    [InlineData("18 18 18 18 18 18 18 18 18", "large", 2)]
    public void A_connector_grips_its_wires_by_number_and_copper_and_where_none_does_several_are_linked(string gauges, string size, int count)
    {
        var chosen = Connectors.For([.. gauges.Split(' ').Select(g => WireSize.FromAwg(int.Parse(g, System.Globalization.CultureInfo.InvariantCulture)))]);
        Assert.Equal(($"{size} waterproof connector", count), (chosen!.Value.Connector.Name, chosen.Value.Count));
    }

    [Fact]
    public void What_nothing_grips_is_said() => Assert.Null(Connectors.For([WireSize.FromAwg(0), WireSize.FromAwg(0)]));

    [Fact]
    public void A_box_with_ends_noted_is_rebuilt_joint_by_joint()
    {
        var plan = Ground(size: "10 in round").Plan("box 2");
        Assert.Equal((RepairThing.Box, RepairKind.Box), (plan.Kind, plan.Choice.Kind));
        Assert.Equal([("station 1", 2), ("common", 2)], plan.Joints.Select(j => (j.Name, j.Ends.Count)));
        Assert.Equal(["18 AWG", "(18 AWG)"], plan.Joints[0].Gauges);
        Assert.Equal(plan.Choice.Parts.Sum(p => p.Price), plan.Choice.Cost.Parts);
        Assert.Equal(BoxRebuild.Steps.Select(BoxRebuild.Named), plan.Steps.Select(s => s.Key));
    }

    /// <summary>A 1.5 in bonnet of 140 mm with 65 mm on each side is 270 mm across: a 10 in round box is too narrow, a standard one is not.</summary>
    [Fact]
    public void A_box_that_is_too_small_for_a_hand_round_its_valve_is_replaced()
    {
        var plan = Ground(size: "10 in round").Plan("box 2");
        Assert.Equal(("standard", false), (plan.Fit!.Needed, plan.Fit.IsEnough));
        Assert.Contains(plan.Choice.Parts, p => p.What == "standard");
        Assert.Contains(plan.Permissions, p => p.Kind == PermissionKind.LocateTicket);
        Assert.True(Ground(size: "standard").Plan("box 2").Fit!.IsEnough);
        Assert.Contains("its size", Ground(size: null).Plan("box 2").Unknown);
    }

    [Fact]
    public void Where_belief_points_at_one_joint_remaking_it_is_weighed_against_the_whole_box()
    {
        var answers = RepairGround.Sure("bad-splice", "1", new PlaceProbability("box 2", 0.9) { Id = "b2" });
        var plan = Ground(size: "standard").Plan("box 2", answers);
        Assert.Equal(0.9, plan.Chance!.Value, 1e-9);
        Assert.Equal((RepairKind.Joint, 2), (plan.Choice.Kind, plan.Options.Count));
        Assert.Equal([true, false], plan.Joints.Select(j => j.Suspected));
        Assert.Contains(plan.Steps.Single(s => s.Key == BoxRebuild.Named(RebuildStep.Remake)).Passed, f => f is WorkFact { Did: BoxRebuild.Remaking, Place: "b2", Target: "s1" });
        Assert.Contains(RepairPlan.All(Ground(size: "standard").Notebook(), answers).Items, i => i.Thing == "b2");
    }

    [Fact]
    public void A_rebuild_that_is_begun_goes_on_where_it_was_left_and_is_listed()
    {
        var ground = Ground(size: "standard");
        var plan = ground.Do("box 2", RepairGround.Nothing);
        Assert.Equal(BoxRebuild.Named(RebuildStep.Photograph), plan.Steps[0].Key);
        Assert.Contains(RepairPlan.All(ground.Notebook(), RepairGround.Nothing).Items, i => i.Thing == "b2");
    }

    [Fact]
    public void Without_ends_noted_the_joints_are_those_that_the_cables_make_likely()
    {
        var plan = new RepairGround(
            new CableFact { Id = "k1", From = "c", To = "b2", Carries = ["s1", "s2"], Gauge = WireSize.FromAwg(18) },
            new CableFact { Id = "k2", From = "b2", To = "bare", Carries = ["s1"] }).Plan("box 2");
        Assert.Equal([("station 1", 2), ("station 2", 2), ("common", 3)], plan.Joints.Select(j => (j.Name, j.Ends.Count)));
        Assert.Contains(plan.Unknown, u => u.Contains("cables make likely", StringComparison.Ordinal));
    }

    private static RepairGround Ground(string? size) => new(
        new BoxFact { Id = "b2", Size = size },
        new EndFact { Id = "e1", Place = "b2", Label = "1", Gauge = WireSize.FromAwg(18), Station = "s1", Mates = ["e2"] },
        new EndFact { Id = "e2", Place = "b2", Label = "2" },
        new EndFact { Id = "e3", Place = "b2", Label = "3", Common = true, Gauge = WireSize.FromAwg(14), Mates = ["e4"] },
        new EndFact { Id = "e4", Place = "b2", Label = "4", Common = true });
}
