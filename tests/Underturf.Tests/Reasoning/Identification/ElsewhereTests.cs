using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.Identification;

/// <summary>What is noted at other places, and ends that lie at the controller itself. The property is made up.</summary>
public sealed class ElsewhereTests
{
    private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.FromHours(-6));

    private static readonly BoxFact Next = new() { Id = "next", Position = new Position(90, 0) };

    [Fact]
    public void An_end_is_what_its_far_end_is_joined_to_in_another_box() =>
        Assert.True(Share(Name("b", Next, new EndFact { Id = "f", Place = "next", Mates = ["g"] }, new EndFact { Id = "g", Place = "next", Station = "s3" }, End("e2") with { FarEnd = "f" }), 1, "s3") > 0.8);

    [Fact]
    public void The_one_conductor_of_its_colour_in_a_cable_is_followed_to_the_next_box() =>
        Assert.True(Share(Name("b", Next, Cable(), new EndFact { Id = "f", Place = "next", Cable = "k", Colour = "Red", Station = "s3" }, End("e2") with { Cable = "k" }), 1, "s3") > 0.6);

    [Fact]
    public void Two_conductors_of_one_colour_in_a_cable_are_not_told_apart_by_it() =>
        Assert.True(Share(Name("b", Next, Cable(), new EndFact { Id = "f", Place = "next", Cable = "k", Colour = "red", Station = "s3" }, End("e2") with { Cable = "k" }, End("e3") with { Cable = "k" }), 1, "s3") < 0.4);

    [Fact]
    public void Far_ends_that_lead_round_in_a_ring_end_the_search()
    {
        var naming = Name("b", Next, new EndFact { Id = "f", Place = "next", FarEnd = "e2" }, End("e2") with { FarEnd = "f" });
        Assert.Equal(4, naming.Ends.Count);
    }

    [Fact]
    public void Each_common_seen_at_the_controller_is_a_wire_of_its_own()
    {
        var naming = Name("b", At("w1") with { Common = true, Colour = "white" }, At("w2") with { Common = true, Colour = "black" }, End("e2") with { Colour = "black" }, End("e1") with { Colour = "white" });
        Assert.True(Share(naming, 0, "c") > 0.5, $"{Share(naming, 0, "c")}");
        Assert.True(Share(naming, 1, "w2") > 0.3, $"{Share(naming, 1, "w2")}");
    }

    [Fact]
    public void Ends_at_the_controller_are_named_by_what_is_put_on_at_the_valves()
    {
        Fact[] bundle = [At("a1") with { Label = "a1" }, At("a2") with { Label = "a2" }];
        var naming = Name("c", [.. bundle, new TouchFact { How = "tone", Place = "c", Put = ["s2"], Touched = ["a1", "a2"], Answered = ["a2"] }]);
        Assert.Equal("station 2", naming.Ends[1].Shares[0].Name);
        Assert.All(naming.Plans, p => Assert.EndsWith("one wire at a time", p.Way, StringComparison.Ordinal));
        Assert.DoesNotContain(naming.Plans, p => p.Way.StartsWith("live wire", StringComparison.Ordinal));
    }

    [Fact]
    public void A_portable_source_brings_a_live_wire_to_the_valves() =>
        Assert.Contains(Answer(new NamingCrew(Source: true), "c", At("a1"), At("a2")).Plans, p => p.Way == "live wire, one wire at a time");

    [Fact]
    public void Naming_stands_beside_the_moves_in_the_same_minutes()
    {
        var move = Assert.Single(Notebook.Open(Log(), PracticeBook.Default).Answer().Naming);
        Assert.Equal(("b", 4, 4), (move.Place, move.Unnamed, move.Ends));
        Assert.True(move.Worth > move.Minutes);
        Assert.InRange(move.WalkMinutes, 0.1, move.Minutes);
        Assert.Empty(Notebook.Open(Log(), PracticeBook.Default).Answer(new Standpoint(null, 2)).Value.Naming);
        var together = Notebook.Open(Log(), PracticeBook.Default).Answer().Together;
        Assert.Equal((move.Minutes, move.Worth, "naming-b"), together.Where(m => m.Place == "b").Select(m => (m.Minutes, m.Worth, m.Question)).Single());
        Assert.Equal(together.Where(m => m.Question != "naming-b"), Notebook.Open(Log(), PracticeBook.Default).Answer().Moves);
    }

    [Fact]
    public void Naming_stands_among_the_moves_but_after_what_has_to_be_taken_again_and_after_a_round_that_fits_the_time()
    {
        Move Saves(string question, double worth) => new("read", "box", 10, worth, "Power off.", question);
        var doubted = new OpenQuestion("a", "low ohms", ["1"], [], [], [Saves("a", 12)], false) { Repeats = [new Repeat("station ohms", "box", "they differ", [])] };
        var answers = new Answers("1", "1", [doubted], [Saves("a", 12), Saves("b", 90), Saves("c", 30)]) { Naming = [new NamingMove("box 3", "b3", 2, 4, "tone", 10, 1, 50, "", "")] };
        Assert.Equal(["a", "b", "naming-b3", "c"], answers.Together.Select(m => m.Question));
        Assert.Equal(["a", "b", "c", "naming-b3"], (answers with { IsRound = true }).Together.Select(m => m.Question));
    }

    private static EndFact End(string id) => new() { Id = id, Place = "b", Colour = "red" };

    private static EndFact At(string id) => new() { Id = id, Place = "c" };

    private static CableFact Cable() => new() { Id = "k", From = "b", To = "next" };

    private static double Share(NamingAnswer naming, int end, string wire) => naming.Ends[end].Shares.FirstOrDefault(s => s.Wire == wire)?.Probability ?? 0.01;

    private static NamingAnswer Name(string place, params Fact[] more) => Answer(new NamingCrew(), place, more);

    private static NamingAnswer Answer(NamingCrew crew, string place, params Fact[] more) => Notebook.Open(Log(more), PracticeBook.Default).Name(place, crew).Value;

    /// <summary>A controller of four stations and a box sixty metres out with four red ends.</summary>
    private static LogDocument Log(params Fact[] more)
    {
        var keeper = new LogKeeper("made-up");
        void Note(Fact fact) => keeper.Note("maren", Morning, fact with { Sure = Grade.Measured });
        Note(new ControllerFact { Id = "c", Label = "A", Terminals = 4, Position = new Position(0, 0) });
        Note(new BoxFact { Id = "b", Label = "box", Position = new Position(60, 0) });
        Enumerable.Range(1, 4).ToList().ForEach(s => Note(new StationFact { Id = $"s{s}", Controller = "c", Terminal = s }));
        Enumerable.Range(1, 4).ToList().ForEach(e => Note(End($"e{e}") with { Label = $"end {e}" }));
        more.ToList().ForEach(Note);
        return keeper.Log();
    }
}
