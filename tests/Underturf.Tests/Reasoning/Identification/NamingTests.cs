using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.Identification;

/// <summary>Which wire an end is, by what was touched. The box is made up.</summary>
public sealed class NamingTests
{
    [Fact]
    public void An_end_that_answers_for_one_wire_alone_gets_its_name()
    {
        var naming = new Box().Touch("test coil", ["s2"], ["e2", "e3", "e4"], "e3").Touch("test coil", ["s2"], ["e3"], "e3").Touch("continuity", ["s2"], ["e3", "e4"], "e3").Name();
        Assert.Equal("station 2", naming.Ends[2].Shares[0].Name);
        Assert.True(naming.Ends[2].Named);
        Assert.Contains(naming.Wires, w => w is { Name: "station 2", End: "end 3" });
    }

    [Fact]
    public void Who_is_named_is_no_other()
    {
        var before = new Box().Touch("continuity", ["s1", "s2"], ["e2", "e3", "e4"], "e2", "e3").Name();
        var after = new Box().Touch("continuity", ["s1", "s2"], ["e2", "e3", "e4"], "e2", "e3").Touch("continuity", ["s1"], ["e2"], "e2").Name();
        Assert.True(Share(after, 2, "s2") > Share(before, 2, "s2") + 0.2);
    }

    [Fact]
    public void The_same_touch_made_again_and_again_says_little_more_than_once()
    {
        var once = new Box().Touch("live wire", ["s1"], ["e2"]).Name();
        var often = Enumerable.Range(0, 12).Aggregate(new Box(), (box, _) => box.Touch("live wire", ["s1"], ["e2"])).Name();
        Assert.True(Share(often, 1, "s1") > Share(once, 1, "s1") / 20);
    }

    [Fact]
    public void A_touch_against_all_others_is_doubted_and_named()
    {
        var box = new Box();
        foreach (var way in new[] { "test coil", "continuity" })
        {
            box.Touch(way, ["s1"], ["e2", "e3"], "e2").Touch(way, ["s2"], ["e2", "e3"], "e3");
        }

        Assert.Empty(box.Name().Doubts);
        var doubt = Assert.Single(box.Touch("test coil", ["s3"], ["e2", "e4"], "e2").Name().Doubts);
        Assert.StartsWith("maren/", doubt.Entry, StringComparison.Ordinal);
        Assert.Contains("end 2 answered with test coil on station 3", doubt.Why, StringComparison.Ordinal);
        Assert.Contains("station 1", doubt.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Ohms_at_the_controller_name_the_end_that_has_that_resistor()
    {
        var box = new Box().With(new ResistorFact { End = "e2", Ohms = Resistance.FromSi(220) }).With(new ResistorFact { End = "e3", Ohms = Resistance.FromSi(470) });
        Assert.Equal("end 3", box.Read("s1", "471.9 ohm", "e2", "e3").Name().Wires.Single(w => w.Wire == "s1").End);
    }

    [Fact]
    public void A_wire_that_reads_over_range_ends_at_none_of_the_resistors()
    {
        var box = new Box().With(new ResistorFact { End = "e2", Ohms = Resistance.FromSi(220) });
        Assert.True(Share(box.Read("s1", "over range", "e2").Name(), 1, "s1") < 0.2 * Share(new Box().Name(), 1, "s1"));
    }

    [Fact]
    public void The_plan_stands_beside_its_rivals_the_cheapest_first()
    {
        var naming = new Box().Name();
        Assert.True(naming.Plans.Count > 3);
        Assert.Equal(naming.Plans.OrderBy(p => p.Loss), naming.Plans);
        Assert.NotEmpty(naming.Next!.Caution);
        Assert.Equal(naming.Plans[0].Way, naming.Sheet!.Way);
    }

    [Fact]
    public void Two_people_do_not_walk()
    {
        var (one, two) = (new Box().Name(new NamingCrew(1)), new Box().Name(new NamingCrew(2)));
        Assert.True(two.Plans[0].Minutes < one.Plans[0].Minutes);
        Assert.Contains(two.Plans, p => p.Way == "continuity, touch by touch");
    }

    [Fact]
    public void On_paper_every_wire_has_a_pattern_of_its_own()
    {
        var sheet = new Box().Name(new NamingCrew(Plan: "continuity, half")).Sheet!;
        Assert.NotEmpty(sheet.Keys);
        Assert.Equal(sheet.Keys.Count, sheet.Keys.Select(k => k.Sign).Distinct().Count());
        Assert.All(sheet.Keys, k => Assert.Contains('+', k.Sign));
        Assert.All(sheet.Keys, k => Assert.Equal(sheet.Rounds.Count, k.Sign.Length));
    }

    [Fact]
    public void A_spare_is_proven_step_by_step_and_to_this_place_only()
    {
        var box = new Box().With(new EndFact { Id = "x", Place = "c", Label = "loose 1", Colour = "green" });
        box.Touch("test coil", ["x"], ["e2", "e3", "e4"], "e4").Touch("continuity", ["x"], ["e2", "e3", "e4"], "e4");
        var spare = Assert.Single(box.Name().Spares);
        Assert.True(spare.CarriesCoil);
        Assert.False(spare.Proven);
        Assert.Equal(2, spare.Missing.Count);
        box.With(new TouchFact { How = "continuity", Place = "b", Put = ["x"], Touched = ["e4"], Answered = ["e4"], Against = "e1", Value = Shown.Parse("2.6 ohm").Value });
        box.With(new TouchFact { How = "insulation", Place = "b", Put = ["x"], Touched = ["e4"], Value = Shown.OverRange });
        spare = Assert.Single(box.Name().Spares);
        Assert.True(spare.Proven, string.Join("; ", spare.Missing));
        Assert.Equal("box", spare.To);
    }

    [Fact]
    public void What_cannot_be_asked_is_told_with_a_remedy()
    {
        Assert.Contains("is not noted", new Box().Asked("nowhere").ToString(), StringComparison.Ordinal);
        Assert.Contains("has no conductor ends noted", new Box().Asked("c").ToString(), StringComparison.Ordinal);
        Assert.Contains("Name one of: ", new Box().Asked("b", new NamingCrew(Plan: "by prayer")).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Touches_that_cannot_be_used_are_named_by_check()
    {
        var box = new Box().Touch("test coil", ["nobody"], ["e2"]).Touch("live wire", ["s1"], []).With(new TouchFact { How = "by prayer", Place = "b", Put = ["s1"], Touched = ["e2"] });
        var problems = box.Problems().Select(p => p.ToString()).ToList();
        Assert.Contains(problems, p => p.Contains("puts it on 'nobody'", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.Contains("touches no conductor end", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.Contains("is done by 'by prayer'", StringComparison.Ordinal) && p.Contains("test coil", StringComparison.Ordinal));
    }

    [Fact]
    public void A_round_that_tells_nothing_is_named_with_a_remedy()
    {
        var round = new TouchFact { How = "known resistor", Place = "b", Put = ["s1"], Touched = ["e2"], Against = "e1" };
        var box = new Box().With(round with { Value = Shown.Parse("220 ohm").Value }).With(new ResistorFact { End = "e2", Ohms = Resistance.FromSi(220) }).With(round);
        box.With(round with { How = "continuity", Touched = ["e1"] }).With(round with { How = "continuity", Against = "elsewhere" });
        var said = string.Join('\n', box.Problems());
        Assert.Contains("no resistor is noted on any of the ends touched", said, StringComparison.Ordinal);
        Assert.Contains("without what the meter showed", said, StringComparison.Ordinal);
        Assert.Contains("touches the very end that the other lead is on", said, StringComparison.Ordinal);
        Assert.Contains("has the other lead on 'elsewhere'", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_round_in_which_an_end_of_another_place_answered_is_not_held_against_the_right_one()
    {
        var box = new Box().With(new EndFact { Id = "far", Place = "c", Label = "far" });
        var before = Share(box.Name(), 2, "s2");
        box.Touch("continuity", ["s2"], ["e2", "e3"], "far").Touch("continuity", ["s2"], ["e2", "e3"], "nobody");
        Assert.Equal(before, Share(box.Name(), 2, "s2"), 9);
        var said = string.Join('\n', box.Problems());
        Assert.Contains("says that 'far' answered, which is no conductor end of this place", said, StringComparison.Ordinal);
        Assert.Contains("names 'nobody', which nobody has noted", said, StringComparison.Ordinal);
    }

    [Fact]
    public void An_end_of_another_place_that_was_touched_is_named_and_the_others_are_used()
    {
        var box = new Box().With(new EndFact { Id = "far", Place = "c", Label = "far" }).Touch("test coil", ["s2"], ["e2", "far"], "e2");
        Assert.Contains("touches end far ('far'), which is no conductor end of this place; the others are used", Assert.Single(box.Problems()).ToString(), StringComparison.Ordinal);
        Assert.True(Share(box.Name(), 1, "s2") > 0.5);
    }

    [Theory]
    [InlineData("24 V", 220, 470, "gives '24 V', which is voltage")]
    [InlineData("225 ohm", 220, 221, "resistors on end 2 and end 3 that this meter cannot tell apart")]
    [InlineData("225 ohm", 220, 470, "")]
    public void What_a_known_resistor_cannot_tell_is_named(string shown, double one, double other, string said)
    {
        var box = new Box().With(new ResistorFact { End = "e2", Ohms = Resistance.FromSi(one) }).With(new ResistorFact { End = "e3", Ohms = Resistance.FromSi(other) }).Read("s2", shown, "e2", "e3");
        Assert.Contains(said, string.Join('\n', box.Problems()), StringComparison.Ordinal);
        Assert.Equal(said.Length > 0, box.Problems().Count > 0);
    }

    [Fact]
    public void A_reading_by_resistor_that_touches_speak_against_is_doubted_and_so_is_over_range_where_it_must_end()
    {
        Box Touched() => new Box().Touch("test coil", ["s1"], ["e2", "e3"], "e3").Touch("continuity", ["s1"], ["e2", "e3"], "e3").With(new ResistorFact { End = "e2", Ohms = Resistance.FromSi(220) }).With(new ResistorFact { End = "e3", Ohms = Resistance.FromSi(470) });
        var read = Touched().Read("s1", "221.9 ohm", "e2", "e3").Name().Doubts;
        Assert.Contains(read, d => d.Why.StartsWith("station 1 read 222 ohm by known resistor, which is the resistor on end 2; by all other notes that has a chance of ", StringComparison.Ordinal));
        Assert.Contains(Touched().Read("s1", "over range", "e2", "e3").Name().Doubts, d => d.Why.Contains("station 1 read over range by known resistor", StringComparison.Ordinal));
        Assert.Empty(Touched().Read("s1", "471.9 ohm", "e2", "e3").Name().Doubts);
    }

    [Fact]
    public void Ohms_of_no_resistor_are_doubted_and_a_short_is_left_out_and_named()
    {
        Box Fitted() => new Box().With(new ResistorFact { End = "e2", Ohms = Resistance.FromSi(220) }).With(new ResistorFact { End = "e3", Ohms = Resistance.FromSi(470) });
        Assert.Contains("which is what none of the resistors noted would show", Assert.Single(Fitted().Read("s1", "340 ohm", "e2", "e3").Name().Doubts).Why, StringComparison.Ordinal);
        Assert.Equal(Share(Fitted().Name(), 1, "s1"), Share(Fitted().Read("s1", "0 ohm", "e2", "e3").Name(), 1, "s1"), 9);
        Assert.Contains("reads 0 ohm, less than the resistors noted there let through: leads that touch", Assert.Single(Fitted().Read("s1", "0 ohm", "e2", "e3").Problems()).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_wire_that_reads_otherwise_the_second_time_is_named_with_both_notes()
    {
        var box = new Box().With(new ResistorFact { End = "e2", Ohms = Resistance.FromSi(220) }).With(new ResistorFact { End = "e3", Ohms = Resistance.FromSi(470) });
        var said = Assert.Single(box.Read("s1", "221.9 ohm", "e2", "e3").Read("s1", "471.9 ohm", "e2", "e3").Problems()).ToString();
        Assert.Contains("shows end 2, note maren/", said, StringComparison.Ordinal);
        Assert.Contains("shows end 3: only the later one counts", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("b", 220, "puts a resistor on 'b', which is no conductor end and no station")]
    [InlineData("e2", 0, "notes a resistor of 0 ohm, which is none")]
    [InlineData("e2", 1e12, "more than the meter of the practice book shows")]
    [InlineData("s2", 220, "")]
    public void A_resistor_that_can_tell_nothing_is_named(string end, double ohms, string said)
    {
        var problems = new Box().With(new ResistorFact { End = end, Ohms = Resistance.FromSi(ohms) }).Problems();
        Assert.Equal(said.Length > 0, problems.Count == 1);
        Assert.Contains(said, string.Join('\n', problems), StringComparison.Ordinal);
    }

    private static double Share(NamingAnswer naming, int end, string wire) => naming.Ends[end].Shares.FirstOrDefault(s => s.Wire == wire)?.Probability ?? 0.01;

    /// <summary>A box sixty metres out: a white end, which is the common, and three that may be any of four stations.</summary>
    private sealed class Box
    {
        private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.FromHours(-6));

        private readonly LogKeeper keeper = new("made-up");
        private int minute;

        public Box()
        {
            With(new ControllerFact { Id = "c", Label = "A", Terminals = 4, Position = new Position(0, 0) });
            With(new BoxFact { Id = "b", Label = "box", Position = new Position(60, 0) });
            for (var s = 1; s <= 4; s++)
            {
                With(new StationFact { Id = $"s{s}", Controller = "c", Terminal = s });
                With(new EndFact { Id = $"e{s}", Place = "b", Label = $"end {s}", Colour = s == 1 ? "white" : "red", Common = s == 1 ? true : null });
            }
        }

        public Box With(Fact fact)
        {
            keeper.Note("maren", Morning.AddMinutes(minute++), fact with { Sure = Grade.Measured });
            return this;
        }

        public Box Touch(string how, string[] put, string[] touched, params string[] answered) =>
            With(new TouchFact { How = how, Place = "b", Put = put, Touched = touched, Answered = answered, Against = PracticeBook.Default.Naming.Way(how)!.NeedsCommon ? "e1" : null });

        public Box Read(string wire, string shown, params string[] fitted) =>
            With(new TouchFact { How = "known resistor", Place = "b", Put = [wire], Touched = fitted, Against = "e1", Value = Shown.Parse(shown).Value });

        public NamingAnswer Name(NamingCrew? crew = null) => Notebook.Open(keeper.Log(), PracticeBook.Default).Name("box", crew ?? new NamingCrew()).Value;

        public IReadOnlyList<Problem> Problems() => Notebook.Open(keeper.Log(), PracticeBook.Default).Problems;

        public Problem Asked(string place, NamingCrew? crew = null) => Notebook.Open(keeper.Log(), PracticeBook.Default).Name(place, crew ?? new NamingCrew()).Problem!;
    }
}
