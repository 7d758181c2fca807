using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.Identification;

/// <summary>An end that comes from no controller may be the far part of a conductor that is cut: the valve that clicks with a source on it tells whose. The property is made up.</summary>
public sealed class FarPartTests
{
    private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.FromHours(-6));

    [Fact]
    public void The_valve_that_clicks_says_whose_far_part_an_end_is_and_no_wire_is_named_by_it()
    {
        var (before, after) = (Name(Silent), Name([.. Silent, Click("e3", "s4")]));
        Assert.Empty(before.Ends[2].FarPartOf);
        var far = Assert.Single(after.Ends[2].FarPartOf);
        Assert.Equal("station 4", far.Name);
        Assert.InRange(far.Probability, 0.8, 1);
        Assert.Null(after.Ends[2].Shares[0].Wire);
    }

    [Fact]
    public void Where_ends_are_joined_the_valve_that_clicks_speaks_for_that_wire()
    {
        Fact[] joined = [new EndFact { Id = "e3", Place = "b", Mates = ["e4"] }];
        Assert.True(Share(Name([.. joined, Click("e3", "s4")]), "e3", "s4") > 3 * Share(Name(joined), "e3", "s4"));
    }

    [Fact]
    public void Two_ends_that_are_both_said_to_be_one_station_and_are_not_joined_are_both_parts_of_its_conductor()
    {
        Fact[] both = [new EndFact { Id = "e3", Place = "b", Station = "s4" }, new EndFact { Id = "e4", Place = "b", Station = "s4" }];
        var naming = Name([.. both, new TouchFact { How = "continuity", Place = "b", Against = "e1", Put = ["s4"], Touched = ["e2", "e3", "e4"], Answered = ["e3"] }]);
        Assert.Equal("station 4", naming.Ends[2].Shares[0].Name);
        Assert.True(naming.Ends[3].FarPartOf.Single(s => s.Name == "station 4").Probability > 0.8);
    }

    [Fact]
    public void A_source_at_hand_offers_the_ends_of_no_controller_to_be_listened_for_once()
    {
        Assert.Empty(Name(Silent).Onward);
        var test = Assert.Single(Name(new NamingCrew(Source: true), Silent).Onward);
        Assert.Equal(("valve click", "e3", "stations 1 to 5"), (test.How, test.End, test.Among));
        Assert.Contains("feeds back", test.Caution, StringComparison.Ordinal);
        Assert.Empty(Name(new NamingCrew(Source: true), [.. Silent, Click("e3", "s4")]).Onward);
    }

    [Fact]
    public void Clicks_that_cannot_be_used_are_named()
    {
        var said = string.Join('\n', Opened([Click("e3", "s4") with { Put = ["e2", "e3"] }, Click("e3", "s4") with { Put = ["s1"], Touched = ["e2"], Answered = [] }]).Problems);
        Assert.Contains("puts 'valve click' on several ends", said, StringComparison.Ordinal);
        Assert.Contains("puts 'valve click' on no end of the place", said, StringComparison.Ordinal);
    }

    /// <summary>End 3 answers to nothing that is put on at the controller.</summary>
    private static Fact[] Silent => [.. new[] { "continuity", "test coil", "live wire" }.Select(how => new TouchFact { How = how, Place = "b", Against = "e1", Put = ["s1", "s2", "s3", "s4", "s5"], Touched = ["e2", "e3", "e4"], Answered = ["e2", "e4"] })];

    private static TouchFact Click(string end, string station) => new() { How = "valve click", Place = "b", Put = [end], Touched = ["s1", "s2", "s3", "s4", "s5"], Answered = [station] };

    private static double Share(NamingAnswer naming, string end, string wire) => naming.Ends.Single(e => e.Ids.Contains(end)).Shares.FirstOrDefault(s => s.Wire == wire)?.Probability ?? 0;

    private static NamingAnswer Name(params Fact[] more) => Name(new NamingCrew(), more);

    private static NamingAnswer Name(NamingCrew crew, params Fact[] more) => Opened(more).Name("b", crew with { Plan = "continuity, half of the wires at a time" }).Value;

    /// <summary>A controller of five stations and a box sixty metres out with a common and three red ends.</summary>
    private static Notebook Opened(Fact[] more)
    {
        var keeper = new LogKeeper("made-up");
        void Note(Fact fact) => keeper.Note("maren", Morning, fact with { Sure = Grade.Measured });
        Note(new ControllerFact { Id = "c", Label = "A", Terminals = 5, Position = new Position(0, 0) });
        Note(new BoxFact { Id = "b", Label = "box", Position = new Position(60, 0) });
        Enumerable.Range(1, 5).ToList().ForEach(s => Note(new StationFact { Id = $"s{s}", Controller = "c", Terminal = s }));
        Enumerable.Range(1, 4).ToList().ForEach(e => Note(new EndFact { Id = $"e{e}", Place = "b", Label = $"end {e}", Colour = "red", Common = e == 1 ? true : null }));
        more.ToList().ForEach(Note);
        return Notebook.Open(keeper.Log(), PracticeBook.Default);
    }
}
