using Underturf.FieldLog;
using Underturf.Reasoning.Water;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>Who has no water meanwhile: also those of which no pipe is noted.</summary>
public sealed class IsolationDryTests
{
    [Fact]
    public void Shut_at_the_point_of_connection_every_station_is_dry_also_one_without_a_pipe()
    {
        var answer = Isolate(Orchard.Piped().With(Fifth), "tee");
        Assert.Equal(["1", "2", "3", "4", "5"], answer.Dry);
        Assert.True(answer.EveryStationDry);
        Assert.Equal("every station on this supply: 1 to 5", answer.SayDry);
        Assert.Empty(answer.MayGoDry);
    }

    [Fact]
    public void Behind_one_valve_a_station_of_which_nobody_knows_the_pipe_may_go_dry()
    {
        var answer = Isolate(Orchard.Piped().With(Fifth), "v3");
        Assert.Equal(["3", "4"], answer.Dry);
        Assert.Equal(["5"], answer.MayGoDry);
        Assert.Equal("station 5, as nobody has noted what feeds it", answer.SayMayGoDry);
        Assert.False(answer.EveryStationDry);
    }

    [Fact]
    public void What_somebody_told_of_a_station_without_a_pipe_counts()
    {
        var other = Isolate(Orchard.Piped().With(Fifth).With(new IsolationValveFact { Id = "i1", Shuts = ["s5"] }), "v3");
        Assert.Empty(other.MayGoDry);
        Assert.Equal(["3", "4"], other.Dry);
        Assert.Equal(["3", "4", "5"], Isolate(Orchard.Piped().With(Fifth).With(new IsolationValveFact { Id = "i2", Shuts = ["s5"] }), "v3").Dry);
    }

    [Fact]
    public void A_valve_that_everything_passes_makes_every_station_dry()
    {
        var orchard = Orchard.Unpiped().With(new IsolationValveFact { Id = "main" });
        foreach (var (from, to) in new[] { ("poc", "main"), ("main", "v1"), ("main", "v2") })
        {
            orchard.With(new PipeFact { Id = $"{from}-{to}", From = from, To = to, Size = "2" });
        }

        var answer = Isolate(orchard, "v1");
        Assert.Equal(["main"], answer.Shut.Select(s => s.Id));
        Assert.Equal(["1", "2", "3", "4"], answer.Dry);
        Assert.True(answer.EveryStationDry);
    }

    [Fact]
    public void Where_no_point_of_connection_is_noted_only_what_is_told_to_lie_behind_is_dry()
    {
        var orchard = new Orchard().With(new PropertyFact { Name = "orchard", Zone = "Etc/UTC" }).With(new ControllerFact { Id = "c", Terminals = 8 });
        foreach (var number in new[] { 1, 2, 3 })
        {
            orchard.With(new StationFact { Id = $"s{number}", Controller = "c", Terminal = number });
        }

        var answer = Isolate(orchard.With(new IsolationValveFact { Id = "i1", Shuts = ["s1"] }).With(new IsolationValveFact { Id = "i2", Shuts = ["s2"] }), "s1");
        Assert.Equal(["i1"], answer.Shut.Select(s => s.Id));
        Assert.Equal(["1"], answer.Dry);
        Assert.False(answer.EveryStationDry);
    }

    [Fact]
    public void With_two_points_of_connection_and_no_pipe_both_are_shut()
    {
        var two = Orchard.Unpiped().With(new WaterSupplyFact { Id = "well", Label = "well" });
        var answer = Isolate(two, "v2");
        Assert.Equal(["poc", "well"], answer.Shut.Select(s => s.Id).Order());
        Assert.True(answer.EveryStationDry);
        Assert.Contains("no pipe to", answer.Needed, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_two_points_of_connection_one_that_is_shut_may_dry_what_nobody_knows_the_pipe_of()
    {
        var two = Orchard.Unpiped().With(new WaterSupplyFact { Id = "well" }).With(new PipeFact { Id = "a", From = "poc", To = "v1" }).With(new PipeFact { Id = "b", From = "well", To = "v2" });
        var answer = Isolate(two, "v1");
        Assert.Equal(["1"], answer.Dry);
        Assert.Equal(["3", "4"], answer.MayGoDry);
    }

    [Fact]
    public void In_a_box_water_to_every_valve_is_shut()
    {
        var box = Orchard.Piped().With(new BoxFact { Id = "b" }).With(new ValveFact { Id = "v1", Station = "s1", Box = "b" }).With(new ValveFact { Id = "v3", Station = "s3", Box = "b" });
        Assert.Equal(["i1", "i2"], Isolate(box, "b").Shut.Select(s => s.Id).Order());
        var unknown = Isolate(box.With(new ValveFact { Id = "v9", Box = "b" }), "b");
        Assert.Equal(["poc"], unknown.Shut.Select(s => s.Id));
        Assert.Contains("valve v9 of box b", unknown.Needed, StringComparison.Ordinal);
    }

    [Fact]
    public void An_isolation_valve_is_not_shut_to_work_on_itself()
    {
        var ring = Orchard.Piped().With(new PipeFact { Id = "back", From = "i1", To = "i2", Size = "1" });
        Assert.DoesNotContain("i2", Isolate(ring, "i2").Shut.Select(s => s.Id));
    }

    [Fact]
    public void A_pipe_that_is_joined_to_nothing_is_said_to_be()
    {
        var apart = Orchard.Unpiped().With(new FittingFact { Id = "far" }).With(new PipeFact { Id = "p", From = "far", To = "v1", Size = "1" });
        Assert.Contains("the pipe to valve v1 of station 1 is joined to nothing that water comes from", Isolate(apart, "1").Needed, StringComparison.Ordinal);
        Assert.True(Isolate(apart, "1").EveryStationDry);
        var flow = apart.Notebook().Flow().Value;
        Assert.Equal(StationPiping.Apart, flow.Stations.Single(s => s.Number == "1").Piping);
        Assert.True(flow.Stations.Single(s => s.Number == "1").CubicMetresPerSecond > 0);
        Assert.Contains("the pipe to station 1 is joined to nothing that water comes from: reckoned straight behind the point of connection", flow.Unknown);
        Assert.Contains("no pipe to station 2 to 4 is noted: reckoned straight behind the point of connection", flow.Unknown);
    }

    [Fact]
    public void Isolation_valves_that_shut_each_other_are_named_and_all_of_them_shut()
    {
        var ring = Orchard.Unpiped().With(new IsolationValveFact { Id = "i1", Shuts = ["i2", "s1"] }).With(new IsolationValveFact { Id = "i2", Shuts = ["i1"] });
        Assert.Equal(["i1", "i2"], Isolate(ring, "v1").Shut.Select(s => s.Id).Order());
        Assert.Equal(["i2"], Isolate(ring, "i1").Shut.Select(s => s.Id));
        Assert.Contains(ring.Problems(), p => p.Place == "isolation valves 'i1', 'i2'" && p.Reason.StartsWith("are noted to shut off each other", StringComparison.Ordinal));
        Assert.DoesNotContain(Orchard.Unpiped().With(new IsolationValveFact { Id = "i1", Shuts = ["i2"] }).With(new IsolationValveFact { Id = "i2", Shuts = ["s1"] }).Problems(), p => p.Reason.Contains("each other", StringComparison.Ordinal));
    }

    [Fact]
    public void The_bleed_to_open_is_one_that_lies_behind_what_is_shut()
    {
        Assert.Contains(Isolate(Orchard.Unpiped(), "3").Relieve, r => r.Contains("valve of station 3", StringComparison.Ordinal));
        Assert.Contains(Isolate(Orchard.Piped().With(Fifth), "v3").Relieve, r => r.Contains("valve of station 3", StringComparison.Ordinal));
    }

    [Fact]
    public void Places_that_can_be_named_are_listed_in_the_order_people_count()
    {
        var places = MakingDry.Places(Orchard.Piped().With(new StationFact { Id = "s10", Controller = "c", Terminal = 10 }).Notebook().History.Now, Underturf.Property.Practice.PracticeBook.Default).Places;
        Assert.Equal(["station 1", "station 2", "station 3", "station 4", "station 10"], places.Where(p => p.Kind == "station").Select(p => p.Name));
        Assert.Contains(places, p => p is { Kind: "isolation valve", Id: "i1" });
    }

    private static StationFact Fifth => new() { Id = "s5", Controller = "c", Terminal = 5 };

    private static IsolationAnswer Isolate(Orchard orchard, string place) => orchard.Notebook().Isolate(place).Value;
}
