using System.Text.Json.Nodes;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Tests.Reasoning.Location;

namespace Underturf.Tests.Property;

/// <summary>A number of locating that changes no answer has no place in the practice book.</summary>
public sealed class LocatingNumbersTests
{
    [Fact]
    public void A_number_of_locating_that_changes_nothing_has_no_place_in_the_book()
    {
        Grounds[] grounds = [Told(), Alone()];
        Assert.Empty(new IdleNumbers<Grounds>(grounds, Said, PracticeBook.Default).Among(BookNumbers.Leaves(BookNumbers.Base()["locating"]!), Changed));
    }

    /// <summary>Every mark, every sign, every way.</summary>
    private static Grounds Told() => Grounds.Corner(
        Grounds.Ground("pond", "water", (30, -10), (36, -10), (36, -5), (30, -5)),
        Grounds.Ground("yard wall", "wall", (0, 20), (15, 20)),
        Grounds.Ground("gas main", "utility mark", (10, 4), (22, 8)),
        new TestFact { Station = "s1", Watered = ["far lawn", "long bed"] },
        new BoxFact { Id = "b1", Position = new Position(9, 6) },
        new BoxFact { Id = "b2", Position = new Position(4, -0.5) },
        new CableFact { Id = "k", From = "c", To = "b1", Carries = ["s1"], Route = [new Position(0, 0), new Position(4, 8), new Position(9, 6)] },
        new SoughtFact { Id = "x", What = "splice", Station = "s1", Cable = "k" },
        Trace("swell", (0, 0), (12, 6), (16, 6)),
        Trace("lost", (0, 0), (8, 12)),
        Trace("goes on", (0, 0), (3, 14)),
        Sign("heard", (17, 7)),
        Sign("not heard", (30, 20)),
        Sign("wet ground", (24, 8)),
        Sign("old dig", (14, 8)),
        Sign("told where", (18, 12)),
        Sign("satellite fix", (20, 9)),
        Sign("first to fill", (22, 12)),
        Sign("fill order", (22, 20), (30, 20), (40, 24)),
        new SignFact { How = "distance", About = "s1", From = "c", Distance = new Length(30) },
        Search("look over", 12, 8),
        Search("probe rod", 15, 7),
        new SearchFact { How = "hand dig", Where = [new Position(17, 8)], Minutes = 30 });

    /// <summary>One thing, so that what to do next is weighed.</summary>
    private static Grounds Alone() => Grounds.Corner(
        new BoxFact { Id = "b1", Position = new Position(9, 6) },
        new GroundFact { Id = "oak", What = "tree", Label = "oak", Shape = [new Position(14, 9)], Trunk = new Length(0.5) });

    private static TraceFact Trace(string ended, params (double East, double North)[] route) =>
        new() { How = "wire tracer", Of = ["s1"], Route = [.. route.Select(p => new Position(p.East, p.North))], Ended = ended };

    private static SignFact Sign(string how, params (double East, double North)[] where) => new() { How = how, About = "s1", Where = [.. where.Select(p => new Position(p.East, p.North))] };

    private static SearchFact Search(string how, double east, double north) => new() { How = how, Where = [new Position(east, north)], Within = new Length(3), Minutes = 5 };

    private static IEnumerable<string> Said(Grounds grounds, PracticeBook book)
    {
        var answer = grounds.Notebook(book).Locate().Value;
        yield return AnswersJson.Write(answer);
        yield return string.Join(' ', answer.Things.Select(t => t.Heat!.Shares.Select((s, c) => s * (c % 97)).Sum()));
    }

    private static PracticeBook? Changed(string path, double factor) =>
        BookNumbers.Changed(path, leaf => leaf.TryGetValue<bool>(out var flag) ? JsonValue.Create(!flag) : JsonValue.Create(leaf.GetValue<double>() * factor));
}
