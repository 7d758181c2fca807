using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning.Water;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>What to shut so that a place has no pressure.</summary>
public sealed class IsolationTests
{
    [Fact]
    public void A_valve_is_shut_off_by_the_isolation_valve_of_its_branch()
    {
        var answer = Isolate(Orchard.Piped(), "v3");
        Assert.Equal(["isolation valve high"], answer.Shut.Select(s => s.Name));
        Assert.Equal(["3", "4"], answer.Dry);
        Assert.Null(answer.Needed);
        Assert.Equal(answer.Shut.Sum(s => s.WalkMinutes + s.TurnMinutes), answer.Minutes);
    }

    [Theory]
    [InlineData("station 3")]
    [InlineData("3")]
    [InlineData("valve v3")]
    [InlineData("i2-v3")]
    public void It_may_be_named_in_any_way(string name) => Assert.Equal("i2", Isolate(Orchard.Piped(), name).Shut[0].Id);

    [Fact]
    public void Where_no_valve_does_it_alone_all_is_shut_and_the_pipe_named_that_needs_one()
    {
        var answer = Isolate(Orchard.Piped(), "tee");
        Assert.Equal("poc", answer.Shut.Single().Id);
        Assert.Contains("pipe poc-tee", answer.Needed, StringComparison.Ordinal);
        Assert.Equal(4, answer.Dry.Count);
        Assert.Equal(["ask the water works to shut it in the street"], answer.IfNot.Single().Shut);
    }

    [Fact]
    public void Fed_from_two_sides_it_takes_two_valves()
    {
        var ring = Orchard.Piped()
            .With(new IsolationValveFact { Id = "i3", Label = "back", Position = new Position(8, 6) })
            .With(new FittingFact { Id = "low end" })
            .With(new FittingFact { Id = "high end" })
            .With(new PipeFact { Id = "a", From = "i1", To = "low end" })
            .With(new PipeFact { Id = "b", From = "i2", To = "high end" })
            .With(new PipeFact { Id = "c", From = "low end", To = "i3" })
            .With(new PipeFact { Id = "d", From = "i3", To = "high end" });
        Assert.Equal(["i2", "i3"], Isolate(ring, "v3").Shut.Select(s => s.Id).Order());
    }

    [Fact]
    public void What_stands_shut_already_costs_nothing_and_is_not_shut_again()
    {
        var answer = Isolate(Orchard.Piped().Turn("i1", "shut").Turn("i2", "shut"), "v3");
        Assert.Empty(answer.Shut);
        Assert.Equal(0, answer.Minutes);
        Assert.Equal(["i2"], answer.Stands.Select(s => s.Id));
        Assert.Equal(["3", "4"], answer.Dry);
        Assert.True(answer.Holds < 1);
    }

    [Fact]
    public void A_point_of_connection_that_was_left_off_stands_shut_until_it_is_on()
    {
        var off = Orchard.Piped().With(new LeftAsFact { Place = "poc", State = "water off" });
        Assert.Equal(["poc"], Isolate(off, "tee").Stands.Select(s => s.Id));
        Assert.Equal(["poc"], Isolate(off.With(new LeftAsFact { Place = "poc", State = "water on" }), "tee").Shut.Select(s => s.Id));
    }

    [Fact]
    public void Without_pipes_what_was_told_lies_behind_a_valve_counts()
    {
        var told = Orchard.Unpiped().With(new IsolationValveFact { Id = "i1", Shuts = ["s1", "s2"] });
        Assert.Equal("i1", Isolate(told, "v2").Shut.Single().Id);
        Assert.Equal("poc", Isolate(told, "v3").Shut.Single().Id);
        Assert.NotNull(Isolate(told, "v3").Needed);
    }

    [Fact]
    public void A_station_is_told_to_lie_behind_a_valve_by_its_own_valve_or_by_a_further_isolation_valve()
    {
        var told = Orchard.Unpiped().With(new IsolationValveFact { Id = "i1", Shuts = ["i2", "v3"] }).With(new IsolationValveFact { Id = "i2", Shuts = ["v1", "s2", "i1"] });
        Assert.Equal(["1", "2", "3"], Isolate(told, "v3").Dry);
        Assert.Equal(["i1", "i2"], Isolate(told, "v1").Shut.Select(s => s.Id).Order());
    }

    [Fact]
    public void What_was_told_counts_where_the_pipes_that_are_noted_end_in_nothing_that_can_be_shut()
    {
        var told = Orchard.Unpiped().With(new PipeFact { Id = "a", From = "poc", To = "v1" }).With(new IsolationValveFact { Id = "i1", Shuts = ["s1"] });
        Assert.Equal("i1", Isolate(told, "v1").Shut.Single().Id);
        Assert.Null(Isolate(told, "v1").Needed);
    }

    [Fact]
    public void Two_points_of_connection_that_are_called_alike_are_told_apart()
    {
        var two = Orchard.Unpiped().With(new WaterSupplyFact { Id = "poc", Label = "meter" }).With(new WaterSupplyFact { Id = "poc2", Label = "meter" })
            .With(new PipeFact { Id = "a", From = "poc", To = "v1" }).With(new PipeFact { Id = "b", From = "poc2", To = "v1" });
        Assert.Equal(["everything at meter poc", "everything at meter poc2"], Isolate(two, "v1").Shut.Select(s => s.Name).Order());
    }

    [Fact]
    public void Two_levels_in_the_hole_say_when_it_is_dry()
    {
        var orchard = Orchard.Piped();
        orchard.With(new ReadingFact { How = "hole level", Place = "v3", Value = Shown.Parse("30 cm").Value });
        orchard.With(new ReadingFact { How = "hole level", Place = "v3", Value = Shown.Parse("20 cm").Value });
        var hole = Isolate(orchard, "v3").Hole!;

        // Evenly, the rest takes two minutes more; seeping it takes longer.
        Assert.InRange(hole.LeastSeconds, 90, 120);
        Assert.True(hole.MostSeconds > 200);
        Assert.Equal(3, hole.Ways.Count);
    }

    [Fact]
    public void A_level_that_rises_is_said_to()
    {
        var orchard = Orchard.Piped();
        orchard.With(new ReadingFact { How = "hole level", Place = "v3", Value = Shown.Parse("20 cm").Value });
        orchard.With(new ReadingFact { How = "hole level", Place = "v3", Value = Shown.Parse("30 cm").Value });
        Assert.Contains("rise", Isolate(orchard, "v3").Hole!.From, StringComparison.Ordinal);
    }

    [Fact]
    public void Heights_say_how_much_comes()
    {
        var slope = Orchard.Piped()
            .With(new IsolationValveFact { Id = "i2", Elevation = new Length(10) })
            .With(new FittingFact { Id = "low", Elevation = new Length(4) })
            .With(new PipeFact { Id = "slope", From = "i2", To = "low", Size = "2", Length = new Length(50) });
        var hole = Isolate(slope, "low").Hole!;

        // A pipe of 2.067 in is full from 4 to 10 m; what joins it higher up runs out too.
        var pipe = Math.PI / 4 * Math.Pow(2.067 * 0.0254, 2) * 50;
        Assert.InRange(hole.MostCubicMetres!.Value, pipe * 0.99, pipe * 4);
        Assert.True(hole.LeastSeconds <= hole.MostSeconds);
    }

    [Fact]
    public void A_place_that_is_not_there_is_named() => Assert.Equal("is not noted", Orchard.Piped().Notebook().Isolate("nowhere").Problem!.Reason);

    private static IsolationAnswer Isolate(Orchard orchard, string place) => orchard.Notebook().Isolate(place).Value;

    [Fact]
    public void What_no_pipe_joins_to_a_point_of_connection_is_not_without_pressure_for_that()
    {
        var orchard = Orchard.Unpiped().With(new FittingFact { Id = "far" }).With(new PipeFact { Id = "p", From = "far", To = "v1", Size = "1" });
        Assert.Equal("everything at street meter", orchard.Notebook().Isolate("v1").Value.Shut.Single().Name);
        Assert.Equal("i1", orchard.With(new IsolationValveFact { Id = "i1", Shuts = ["s1"] }).Notebook().Isolate("v1").Value.Shut.Single().Id);
    }

    [Fact]
    public void A_valve_that_shuts_itself_and_a_pressure_less_than_none_are_named()
    {
        var problems = Orchard.Unpiped().With(new IsolationValveFact { Id = "i1", Shuts = ["i1", "s1"] }).Read("static pressure", "-3 psi").Problems();
        Assert.Contains(problems, p => p.Reason.StartsWith("is noted to shut off itself", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.Reason == "'-3 psi' is less than none");
    }
}
