using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.Identification;

/// <summary>The other lead is on an end taken for the common: what is touched against it holds only where it is one. The box is made up.</summary>
public sealed class CommonTests
{
    private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.FromHours(-6));

    [Fact]
    public void Where_nothing_answers_the_lead_is_on_the_wrong_end_rather_than_every_wire_elsewhere()
    {
        var (before, after) = (Name(), Name(Touch("e1", ["s1", "s2", "s3"], "e2", "e3", "e4")));
        Assert.True(Common(after, 0) < Common(before, 0));
        Assert.True(Common(after, 1) > Common(before, 1));
    }

    [Fact]
    public void Where_something_answers_the_lead_is_on_a_common() =>
        Assert.True(Common(Name(Touch("e1", ["s1", "s2", "s3"], "e2", "e3", "e4") with { Answered = ["e2", "e4"] }), 0) > 0.999);

    [Fact]
    public void A_touch_against_the_wrong_end_says_nothing_of_the_ends_touched()
    {
        Fact[] known = [new EndFact { Id = "e2", Place = "b", Common = true }];
        var (before, after) = (Name(known), Name([.. known, Touch("e1", ["s1", "s2"], "e3", "e4")]));
        Assert.All(Enumerable.Range(2, 2), end => Assert.Equal(Share(before, end, "s1"), Share(after, end, "s1"), 0.02));
    }

    [Fact]
    public void All_wires_read_together_tell_whether_the_lead_is_on_the_common()
    {
        var read = new TouchFact { How = "known resistor", Place = "b", Put = ["s1", "s2", "s3"], Against = "e1", Touched = ["e2", "e3", "e4"] };
        Fact[] fitted = [.. new[] { 100.0, 120, 150 }.Select((ohms, i) => new ResistorFact { End = $"e{i + 2}", Ohms = Resistance.FromSi(ohms) })];
        Assert.True(Common(Name([.. fitted, read with { Value = Shown.Parse("47 ohm").Value }]), 0) > 0.95);
        Assert.True(Common(Name([.. fitted, read with { Value = Shown.OverRange }]), 0) < 0.1);
    }

    [Fact]
    public void A_common_that_is_not_sure_is_checked_before_wires_are_read_one_by_one()
    {
        var next = Name().Next!;
        Assert.Equal(("known resistor", 3), (next.How, next.Put.Count));
        Assert.Contains("over range means that end 1 is not the common", next.Say, StringComparison.Ordinal);
    }

    [Fact]
    public void An_end_of_the_gauge_of_commons_is_likelier_the_common() =>
        Assert.True(Common(Name(new EndFact { Id = "e2", Place = "b", Gauge = WireSize.FromAwg(14) }), 1) > 3 * Common(Name(new EndFact { Id = "e2", Place = "b", Gauge = WireSize.FromAwg(18) }), 1));

    private static double Common(NamingAnswer naming, int end) => Share(naming, end, "c");

    private static double Share(NamingAnswer naming, int end, string wire) => naming.Ends[end].Shares.FirstOrDefault(s => s.Wire == wire)?.Probability ?? 0.01;

    private static TouchFact Touch(string against, string[] put, params string[] touched) => new() { How = "continuity", Place = "b", Put = put, Against = against, Touched = touched };

    /// <summary>A box sixty metres out with four ends, the first of them white, and a controller of three stations.</summary>
    private static NamingAnswer Name(params Fact[] more)
    {
        var keeper = new LogKeeper("made-up");
        void Note(Fact fact) => keeper.Note("maren", Morning, fact with { Sure = Grade.Measured });
        Note(new ControllerFact { Id = "c", Label = "A", Terminals = 3, Position = new Position(0, 0) });
        Note(new BoxFact { Id = "b", Label = "box", Position = new Position(60, 0) });
        Enumerable.Range(1, 3).ToList().ForEach(s => Note(new StationFact { Id = $"s{s}", Controller = "c", Terminal = s }));
        Enumerable.Range(1, 4).ToList().ForEach(e => Note(new EndFact { Id = $"e{e}", Place = "b", Label = $"end {e}", Colour = e == 1 ? "white" : "red", Gauge = WireSize.FromAwg(18) }));
        more.ToList().ForEach(Note);
        return Notebook.Open(keeper.Log(), PracticeBook.Default).Name("b", new NamingCrew()).Value;
    }
}
