using System.Text.Json.Nodes;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Property;

/// <summary>A number of naming that changes no answer has no place in the practice book. Which resistors of the bag are used hangs on the box.</summary>
public sealed class NamingNumbersTests
{
    private static readonly DateTimeOffset Morning = new(2031, 5, 6, 8, 0, 0, TimeSpan.FromHours(-6));

    [Fact]
    public void A_number_of_naming_that_changes_nothing_has_no_place_in_the_book()
    {
        LogDocument[] logs = [Fresh(), Touched(), Spare(apart: true), Spare(apart: false)];
        var paths = BookNumbers.Leaves(BookNumbers.Base()["naming"]!).Where(path => !path.Contains(".resistors[", StringComparison.Ordinal));
        Assert.Empty(new IdleNumbers<LogDocument>(logs, Said, PracticeBook.Default).Among(paths, Changed));
    }

    /// <summary>Nothing touched, the common not known; the bundle was photographed at the controller.</summary>
    private static LogDocument Fresh()
    {
        var keeper = Begun(colours: true);
        return keeper.Log();
    }

    /// <summary>Every way once, on ends that somebody named, measured and told.</summary>
    private static LogDocument Touched()
    {
        var keeper = Begun(colours: false);
        Note(keeper, new EndFact { Id = "e1", Place = "b", Common = true });
        Note(keeper, new EndFact { Id = "e5", Place = "b", Station = "s4" }, Grade.Told);
        Note(keeper, new ResistorFact { End = "e2", Ohms = Resistance.FromSi(220) });
        Note(keeper, Touch("live wire", ["s1", "s2"], ["e2", "e3"], "e2"));
        Note(keeper, Touch("live wire", ["s1"], ["e2", "e3", "e4"], "e3"));
        Note(keeper, Touch("test coil", ["s1"], ["e2", "e3"], "e2"));
        Note(keeper, Touch("test coil", ["s3"], ["e4"]));
        Note(keeper, Touch("tone", ["s3"], ["e2", "e3", "e4"], "e4"));
        Note(keeper, Touch("tone", ["s2"], ["e2", "e3"]));
        Note(keeper, Touch("continuity", ["s3"], ["e2", "e4"], "e4"));
        Note(keeper, Touch("continuity", ["s2"], ["e4", "e3"]));
        Note(keeper, Touch("known resistor", ["s2"], ["e2"]) with { Value = Shown.Parse("226 ohm").Value });
        Note(keeper, Touch("known resistor", ["s3"], ["e2"]) with { Value = Shown.OverRange });
        Note(keeper, Touch("valve click", ["e4"], ["s5", "s6"], "s6"));
        return keeper.Log();
    }

    /// <summary>A spare with a coil carried, its ohms, and few ohms to earth or none read.</summary>
    private static LogDocument Spare(bool apart)
    {
        var keeper = Begun(colours: true);
        Note(keeper, new EndFact { Id = "e1", Place = "b", Common = true });
        Note(keeper, Touch("test coil", ["x"], ["e5"], "e5"));
        Note(keeper, Touch("test coil", ["x"], ["e2", "e3", "e4", "e5"], "e5"));
        Note(keeper, Touch("continuity", ["x"], ["e5"], "e5") with { Value = Shown.Parse("2.6 ohm").Value });
        if (apart)
        {
            Note(keeper, Touch("insulation", ["x"], ["e5"]) with { Value = Shown.Parse("90 kohm").Value });
        }

        return keeper.Log();
    }

    private static LogKeeper Begun(bool colours)
    {
        var keeper = new LogKeeper("made-up");
        Note(keeper, new ControllerFact { Id = "c", Terminals = 6, Position = new Position(0, 0) });
        Note(keeper, new BoxFact { Id = "b", Label = "box", Position = new Position(60, 0) });
        Note(keeper, new BoxFact { Id = "far", Position = new Position(0, 60) });
        for (var s = 1; s <= 6; s++)
        {
            Note(keeper, new StationFact { Id = $"s{s}", Controller = "c", Terminal = s });
        }

        Note(keeper, new CableFact { Id = "k", From = "c", To = "b", Carries = ["s1", "s2"], Length = new Length(70) });
        Note(keeper, new CableFact { Id = "k2", From = "c", To = "far", Carries = ["s6"] });
        Note(keeper, new EndFact { Id = "x", Place = "c", Colour = colours ? "green" : null, Gauge = colours ? WireSize.FromAwg(18) : null });
        foreach (var (at, colour) in new[] { "white", "red", "blue", "white", "green" }.Index())
        {
            Note(keeper, new EndFact { Id = $"e{at + 1}", Place = "b", Label = $"end {at + 1}", Colour = colour, Gauge = WireSize.FromAwg(at == 0 ? 14 : 18) });
        }

        if (colours)
        {
            Note(keeper, new EndFact { Id = "at-s1", Place = "c", Station = "s1", Colour = "red", Gauge = WireSize.FromAwg(18) });
        }

        return keeper;
    }

    private static void Note(LogKeeper keeper, Fact fact, Grade sure = Grade.Measured) => keeper.Note("maren", Morning, fact with { Sure = sure });

    private static TouchFact Touch(string how, string[] put, string[] touched, params string[] answered) =>
        new() { How = how, Place = "b", Put = put, Touched = touched, Answered = answered, Against = PracticeBook.Default.Naming.Way(how)!.NeedsCommon ? "e1" : null };

    private static IEnumerable<string> Said(LogDocument log, PracticeBook book)
    {
        var notebook = Notebook.Open(log, book);
        return new[] { new NamingCrew(), new NamingCrew(1, true), new NamingCrew(2, true, Source: true) }.Select(crew => AnswersJson.Write(notebook.Name("b", crew).Value));
    }

    private static PracticeBook? Changed(string path, double factor) => BookNumbers.Changed(path, leaf =>
        leaf.TryGetValue<bool>(out var flag) ? JsonValue.Create(!flag)
        : leaf.TryGetValue<int>(out var whole) && path.EndsWith("people", StringComparison.Ordinal) ? JsonValue.Create(3 - whole)
        : leaf.TryGetValue<int>(out var most) && path.EndsWith("most", StringComparison.Ordinal) ? JsonValue.Create(factor > 1 ? most + 1 : 1)
        : JsonValue.Create(leaf.GetValue<double>() * factor));
}
