using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.Reasoning.Location;

public sealed class LocateTests
{
    private static readonly Position Spot = new(33, 7);

    [Fact]
    public void The_valve_of_a_station_that_nobody_has_found_is_looked_for()
    {
        var thing = Grounds.Corner().Only();
        Assert.Equal(("valve of station 1", "s1", "valve"), (thing.Name, thing.Station, thing.What));
        Assert.Equal(1, thing.None + thing.Heat!.Shares.Sum(), 9);
    }

    [Fact]
    public void A_valve_that_was_found_is_not()
    {
        var answer = Grounds.Corner(new ValveFact { Id = "v", Station = "s1", Position = Spot }).Notebook().Locate();
        Assert.Equal("has nothing hidden", answer.Problem!.Reason);
    }

    [Fact]
    public void A_place_that_waters_too_has_a_valve_of_its_own_that_may_be_none()
    {
        var things = Grounds.Corner(new TestFact { Station = "s1", Watered = ["far lawn", "long bed"] }).Notebook().Locate().Value.Things;
        Assert.Equal(["valve of station 1, far lawn", "valve of station 1, long bed"], things.Select(t => t.Name));
        Assert.True(things[1].None > things[0].None);
    }

    [Fact]
    public void Beforehand_what_it_waters_draws_the_belief_to_it()
    {
        var thing = Grounds.Corner().Only();
        Assert.True(Grounds.Within(thing, 32, 20, 16) > 5 * Grounds.Within(thing, -5, 25, 16));
    }

    [Fact]
    public void A_swell_draws_the_belief_to_it()
    {
        var thing = Grounds.Corner(Trace("swell")).Only();
        Assert.InRange(Grounds.Within(thing, 33, 7, 2.5), 0.8, 0.99);
        Assert.InRange(thing.Places[0].At!.Value.DistanceMetresTo(Spot), 0, 1.5);
        Assert.True(Assert.Single(thing.Notes).Weight > 1);
    }

    [Fact]
    public void A_lost_signal_draws_it_less_and_farther()
    {
        var (lost, swell) = (Grounds.Corner(Trace("lost")).Only(), Grounds.Corner(Trace("swell")).Only());
        Assert.True(Grounds.Within(lost, 33, 7, 2.5) < Grounds.Within(swell, 33, 7, 2.5));
        Assert.True(lost.Credible[0].SquareMetres > swell.Credible[0].SquareMetres);
    }

    [Fact]
    public void Ground_that_was_searched_holds_it_less_by_how_thoroughly()
    {
        double Left(double minutes) => Grounds.Within(Grounds.Corner(Trace("swell"), new SearchFact { How = "probe rod", Where = [Spot], Within = new Length(3), Minutes = minutes }).Only(), 33, 7, 2.5);
        Assert.True(Left(40) < Left(10));
        Assert.True(Left(10) < Grounds.Within(Grounds.Corner(Trace("swell")).Only(), 33, 7, 2.5));
    }

    [Fact]
    public void Searching_twice_is_searching_as_long_as_both()
    {
        SearchFact Search(double minutes) => new() { How = "probe rod", Where = [Spot], Within = new Length(3), Minutes = minutes };
        var (twice, once) = (Grounds.Corner(Search(6), Search(9)).Only(), Grounds.Corner(Search(15)).Only());
        Assert.All(twice.Heat!.Shares.Zip(once.Heat!.Shares), pair => Assert.Equal(pair.First, pair.Second, 12));
    }

    [Fact]
    public void Heard_and_not_heard_speak_opposite_ways()
    {
        double Near(string how) => Grounds.Within(Grounds.Corner(new SignFact { How = how, About = "s1", Where = [Spot] }).Only(), 33, 7, 2.5);
        var before = Grounds.Within(Grounds.Corner().Only(), 33, 7, 2.5);
        Assert.True(Near("not heard") < before && before < Near("heard"));
    }

    [Fact]
    public void The_order_in_which_outlets_fill_says_on_which_side_it_lies()
    {
        var order = Grounds.Corner(new SignFact { How = "fill order", About = "s1", Where = [new Position(22, 20), new Position(32, 20), new Position(44, 20)] }).Only();
        Assert.True(Grounds.Within(order, 20, 20, 6) > 3 * Grounds.Within(order, 46, 20, 6));
    }

    [Fact]
    public void A_distance_along_the_conductor_says_how_far_from_the_controller()
    {
        var near = Grounds.Corner(new SignFact { How = "distance", About = "s1", From = "c", Distance = new Length(25) }).Only();
        var far = Grounds.Corner(new SignFact { How = "distance", About = "s1", From = "c", Distance = new Length(60) }).Only();
        Assert.True(Grounds.Within(near, 0, 0, 26) > Grounds.Within(far, 0, 0, 26));
    }

    [Fact]
    public void What_was_found_here_teaches_where_things_lie_here()
    {
        Fact[] boxes = [.. Enumerable.Range(0, 6).Select(i => new BoxFact { Id = $"b{i}", Position = new Position(4 + (6 * i), -0.3) })];
        var answer = Grounds.Corner(boxes).Notebook().Locate().Value;
        Assert.Equal(6, answer.Found);
        var paving = answer.Learned.Single(e => e.Mark == "edge of paving");
        Assert.True(paving.Here > paving.Usual + 0.5);
        Assert.Equal(6, paving.FoundNear);
    }

    [Fact]
    public void Without_a_plan_it_lies_at_one_of_the_named_spots()
    {
        var grounds = Grounds.Bare(
            new ControllerFact { Id = "c", Terminals = 4 },
            new StationFact { Id = "s1", Controller = "c", Terminal = 1 },
            new SpotFact { Id = "hedge", Label = "hedge by the gate", Beside = ["bed", "edge of paving"] },
            new SpotFact { Id = "middle", Label = "middle of the lawn", Beside = ["lawn"] },
            new SpotFact { Id = "paces", Label = "twenty paces along the wall", Line = "wall", Along = new Length(18) });
        var thing = grounds.Only();
        Assert.Equal("hedge by the gate", thing.Places[0].Where);
        Assert.Equal("hedge", thing.Places[0].Spot);
        grounds.Note(new SearchFact { How = "hand dig", Spots = ["hedge"], Minutes = 600 });
        Assert.NotEqual("hedge", grounds.Only().Places[0].Spot);
    }

    [Fact]
    public void A_splice_is_looked_for_on_its_cable()
    {
        var things = Grounds.Corner(
            new ValveFact { Id = "v", Station = "s1", Position = new Position(30, 12) },
            new CableFact { Id = "k", From = "c", To = "v", Route = [new Position(0, 0), new Position(10, -5), new Position(30, 12)] },
            new SoughtFact { Id = "x", What = "splice", Cable = "k" }).Only();
        Assert.True(Grounds.Within(things, 10, -5, 3) > 4 * Grounds.Within(things, 10, 12, 3));
    }

    public static TheoryData<Fact, string> Unusable => new()
    {
        { Trace("swell") with { How = "by ear" }, "is 'by ear', which is no way of tracing in the practice book; it counts for nothing" },
        { Trace("poof"), "is 'poof', which is no end of a trace in the practice book; it counts for nothing" },
        { Trace("swell") with { Of = [] }, "is missing: nobody knows what was traced" },
        { Trace("swell") with { Route = [] }, "is missing, and so is 'spots': it says nothing of where" },
        { new SignFact { How = "smelt", Where = [Spot] }, "is 'smelt', which is no sign of the practice book; it counts for nothing" },
        { new SignFact { How = "heard", About = "s1" }, "is missing, and so is 'spots': it says nothing of where" },
        { new SignFact { How = "distance", About = "s1", From = "c" }, "or 'distance' is missing, or the place has no position, so that it says nothing" },
        { new SignFact { How = "fill order", About = "s1", Where = [Spot] }, "holds one position, which is no order" },
        { new SearchFact { How = "probe rod", Where = [Spot] }, "is missing or zero, so that nobody knows how thorough it was; it counts for nothing" },
        { new SearchFact { How = "dynamite", Where = [Spot], Minutes = 2 }, "is 'dynamite', which is no way of searching in the practice book; it counts for nothing" },
        { new SpotFact { Id = "p", Beside = ["moat"] }, "is 'moat', which is no ground mark of the practice book; it counts for nothing" },
        { new SoughtFact { Id = "x", What = "treasure" }, "seeks a 'treasure', which the practice book does not know; it is not looked for" },
    };

    [Theory]
    [MemberData(nameof(Unusable))]
    public void A_note_that_cannot_be_used_is_named_and_changes_nothing(Fact fact, string reason)
    {
        var notebook = Grounds.Corner(fact).Notebook();
        Assert.Contains(notebook.Problems, p => p.Reason == reason);
        Assert.Equal(Grounds.Corner().Only().Places[0].Probability, notebook.Locate("station 1").Value.Things[0].Places[0].Probability, 2);
    }

    [Fact]
    public void Who_asks_for_something_that_is_not_hidden_is_told_what_is()
    {
        var problem = Grounds.Corner().Notebook().Locate("station 9").Problem!;
        Assert.Equal(("is not among what is hidden", "Name one of: valve of station 1"), (problem.Reason, problem.Remedy));
    }

    private static TraceFact Trace(string ended) => new() { How = "wire tracer", Of = ["s1"], Route = [new Position(0, 0), new Position(20, 6), Spot], Ended = ended };
}
