using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.Identification;

/// <summary>Rounds the other way about: ends in the box carry, wires at the controller are touched or fitted. The property is made up.</summary>
public sealed class FromTheBoxTests
{
    private const string Coded = "live wire from the box, half of the ends at a time";

    private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.FromHours(-6));

    [Fact]
    public void A_portable_source_on_ends_in_the_box_tells_few_ends_among_many_wires_in_fewer_rounds()
    {
        var plans = Name(new NamingCrew(Source: true), stations: 16).Plans;
        var (back, forth) = (plans.First(p => p.Way == Coded), plans.First(p => p.Way == "live wire, half of the wires at a time"));
        Assert.True(back.Minutes < forth.Minutes && back.Unnamed <= forth.Unnamed, $"{back} {forth}");
        Assert.DoesNotContain(Name(new NamingCrew(), stations: 4).Plans, p => p.Way.StartsWith("live wire from", StringComparison.Ordinal) || p.Way.StartsWith("test coil from", StringComparison.Ordinal));
    }

    [Fact]
    public void A_round_from_the_box_puts_it_on_ends_and_touches_wires_and_says_what_feeds_back()
    {
        var naming = Name(new NamingCrew(Plan: Coded, Source: true), stations: 4);
        var next = naming.Next!;
        Assert.True(next.FromPlace && naming.Sheet!.FromPlace);
        Assert.All(next.Put, id => Assert.StartsWith("e", id, StringComparison.Ordinal));
        Assert.Contains("s3", next.Touch);
        Assert.Contains("feeds back through its transformer", next.Caution, StringComparison.Ordinal);
        Assert.Contains("end 2", next.On, StringComparison.Ordinal);
        Assert.All(naming.Sheet.Keys, key => Assert.StartsWith("end", key.Name, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_touch_says_the_same_from_either_side(bool answered)
    {
        TouchFact Touch(string put, string touched) => new() { How = "test coil", Place = "b", Against = "e1", Put = [put], Touched = [touched], Answered = answered ? [touched] : [] };
        var (forth, back) = (Name(Common, Touch("s2", "e3")), Name(Common, Touch("e3", "s2")));
        foreach (var end in Enumerable.Range(0, 4))
        {
            Assert.Equal(Share(forth, end, "s2"), Share(back, end, "s2"), 0.005);
            Assert.Equal(Share(forth, end, "s1"), Share(back, end, "s1"), 0.005);
        }
    }

    [Fact]
    public void Where_no_wire_answers_the_lead_in_the_box_is_on_the_wrong_end()
    {
        TouchFact none = new() { How = "test coil", Place = "b", Against = "e2", Put = ["e3", "e4"], Touched = ["s1", "s2", "s3", "s4"] };
        Assert.True(Share(Name(none), 1, "c") < 0.5 * Share(Name(), 1, "c"));
        Assert.True(Share(Name(none with { Answered = ["s1", "s4"] }), 1, "c") > 0.99);
    }

    [Fact]
    public void Resistors_on_wires_at_the_controller_name_the_end_that_reads_them()
    {
        Fact[] fitted = [Common, new ResistorFact { End = "s1", Ohms = Resistance.FromSi(220) }, new ResistorFact { End = "s2", Ohms = Resistance.FromSi(470) }];
        var naming = Name([.. fitted, new TouchFact { How = "known resistor", Place = "b", Against = "e1", Put = ["e3"], Touched = ["s1", "s2"], Value = Shown.Parse("471.9 ohm").Value }]);
        Assert.Equal("end 3", naming.Wires.Single(w => w.Wire == "s2").End);
    }

    [Fact]
    public void Resistors_go_to_the_side_that_has_fewer_to_fit()
    {
        var few = Name(new NamingCrew(Plan: "known resistor"), stations: 2, ends: 9).Plans;
        var many = Name(new NamingCrew(Plan: "known resistor"), stations: 9, ends: 3).Plans;
        Assert.Equal("known resistor at the controller, all in one trip", few[0].Way);
        Assert.Equal("known resistor, all in one trip", many[0].Way);
    }

    [Fact]
    public void What_a_round_from_the_box_cannot_tell_is_named()
    {
        var round = new TouchFact { How = "test coil", Place = "b", Against = "e1", Put = ["e2"], Touched = ["s1"] };
        Fact[] rounds =
        [
            round with { How = "continuity" }, round with { Put = ["e1"] }, round with { Put = ["e2", "s1"] }, round with { Touched = ["e3"] }, round with { Answered = ["e3"] },
            round with { How = "known resistor", Value = Shown.Parse("220 ohm").Value },
        ];
        var said = string.Join('\n', Opened(4, 4, rounds).Problems);
        Assert.Contains("puts 'continuity' on ends of the place itself, which that way is not for", said, StringComparison.Ordinal);
        Assert.Contains("puts it on the very end that the other lead is on", said, StringComparison.Ordinal);
        Assert.Contains("puts it on 's1', which is no conductor end of this place, and on others that are", said, StringComparison.Ordinal);
        Assert.Contains("touches no wire that leaves a controller", said, StringComparison.Ordinal);
        Assert.Contains("says that 'e3' answered, which is no wire that leaves a controller", said, StringComparison.Ordinal);
        Assert.Contains("no resistor is noted on any of the wires touched", said, StringComparison.Ordinal);
    }

    private static EndFact Common => new() { Id = "e1", Place = "b", Common = true };

    private static double Share(NamingAnswer naming, int end, string wire) => naming.Ends[end].Shares.FirstOrDefault(s => s.Wire == wire)?.Probability ?? 0;

    private static NamingAnswer Name(params Fact[] more) => Opened(4, 4, more).Name("b", new NamingCrew()).Value;

    private static NamingAnswer Name(NamingCrew crew, int stations, int ends = 4) => Opened(stations, ends, [Common]).Name("b", crew).Value;

    /// <summary>A controller and a box sixty metres out with red ends.</summary>
    private static Notebook Opened(int stations, int ends, Fact[] more)
    {
        var keeper = new LogKeeper("made-up");
        void Note(Fact fact) => keeper.Note("maren", Morning, fact with { Sure = Grade.Measured });
        Note(new ControllerFact { Id = "c", Label = "A", Terminals = stations, Position = new Position(0, 0) });
        Note(new BoxFact { Id = "b", Label = "box", Position = new Position(60, 0) });
        Enumerable.Range(1, stations).ToList().ForEach(s => Note(new StationFact { Id = $"s{s}", Controller = "c", Terminal = s }));
        Enumerable.Range(1, ends).ToList().ForEach(e => Note(new EndFact { Id = $"e{e}", Place = "b", Label = $"end {e}", Colour = "red" }));
        more.ToList().ForEach(Note);
        return Notebook.Open(keeper.Log(), PracticeBook.Default);
    }
}
