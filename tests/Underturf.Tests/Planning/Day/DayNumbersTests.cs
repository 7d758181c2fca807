using System.Text.Json.Nodes;
using Underturf.FieldLog;
using Underturf.Planning.Day;
using Underturf.Planning.Day.Ordering;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Reasoning.Water;
using Underturf.Tests.Property;
using Underturf.Tests.Reasoning.Water;

namespace Underturf.Tests.Planning.Day;

/// <summary>A number of the day that changes nothing said has no place in the practice book.</summary>
public sealed class DayNumbersTests
{
    private static readonly DateTimeOffset Begin = new(2032, 4, 24, 8, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_number_of_the_day_that_changes_nothing_has_no_place_in_the_book()
    {
        Grounds[] all = [Believed(), Left()];
        var before = all.Select(g => Output(g, PracticeBook.Default)).ToList();
        var idle = BookNumbers.Leaves(BookNumbers.Base()["day"]!).Where(path => !new[] { 1.37, 0.61 }.Any(factor => Changed(path, factor) is { } book && all.Zip(before).Any(p => Output(p.First, book) != p.Second)));
        Assert.Empty(idle);
    }

    /// <summary>Every fault of the book may be, a lateral is to be mended under a ticket, and something runs with everything off.</summary>
    private static Grounds Believed()
    {
        var notebook = Orchard.Piped().With(new LocateTicketFact { Id = "t", Number = "A-1107", Places = ["v1"], From = Begin.AddDays(-3), Expires = Begin.AddDays(9), Marked = ["gas"] }).Notebook();
        var faults = notebook.Book.Faults.Select(f => f.Id).Concat(notebook.Book.Water.Faults.Select(f => f.Id)).ToList();
        var any = new OpenQuestion("any", "something is odd", ["1"], [.. faults.Select(f => new Explanation(f, 1.0 / faults.Count, f, [], [], string.Empty))], [], [], false);
        var spills = new OpenQuestion("spills", "water runs out", ["3"], [new Explanation("lateral-break", 0.9, "a broken lateral", [], [], string.Empty)], [], [], true);
        var idle = new OpenQuestion("idle", "the meter moves", [], [new Explanation("valve-not-closing", 0.1, "a valve", [new PlaceProbability("valve v2", 0.3) { Id = "v2" }], [], string.Empty)], [], [], false) { WaterLost = new WaterLoss(5, 9, null, null) };
        var mend = new Move("mend the lateral", "valve v1", 76, 300, string.Empty, "spills") { Place = "v1", Steps = [new MoveStep("mend the lateral", 75, string.Empty, "spills", new WorkFact { Did = "lateral mended", Place = "v1" })] };
        return new Grounds(notebook, new Answers("0", "0", [any, spills, idle], [mend]), Begin);
    }

    /// <summary>Work of twelve days ago, and a place in each state.</summary>
    private static Grounds Left()
    {
        var orchard = Orchard.Unpiped().With(new BoxFact { Id = "b1" }).With(new BoxFact { Id = "b2" }).With(new WorkFact { Did = "coil replaced", Place = "v4", Target = "s4" });
        string[] places = ["v1", "v2", "v3", "v4", "b1", "b2", "c"];
        var notebook = PracticeBook.Default.Day.States.Zip(places).Aggregate(orchard, (o, s) => o.With(new LeftAsFact { Place = s.Second, State = s.First.Name, Stations = s.Second.Length == 2 && s.Second[0] == 'v' ? [] : ["s2"] })).Notebook();
        return new Grounds(notebook, new Answers("0", "0", [], []), Begin);
    }

    private static string Output(Grounds grounds, PracticeBook book) => DayJson.Write(DayPlan.Of(grounds with { Numbers = book.Day }, "c", book.Day.Minutes, new DayOrder(50)));

    private static PracticeBook? Changed(string path, double factor) => BookNumbers.Changed(path, leaf =>
        leaf.TryGetValue<bool>(out var flag) ? JsonValue.Create(!flag)
        : leaf.GetValue<double>() is 0 ? JsonValue.Create(0.3)
        : JsonValue.Create(leaf.GetValue<double>() * factor));
}
