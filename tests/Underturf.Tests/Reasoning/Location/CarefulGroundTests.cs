using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Tests.Reasoning.Location;

/// <summary>Utility marks and roots where one searches.</summary>
public sealed class CarefulGroundTests
{
    private static readonly Position Spot = new(33, 7);

    private static readonly GroundFact Main = Grounds.Ground("gas main", "utility mark", (30, 7), (33, 7), (36, 8)), Lime = Tree(0.4);

    [Fact]
    public void No_rod_is_pushed_beside_a_utility_mark_and_the_route_says_so()
    {
        var route = Route(Main);
        Assert.All(Searched(route, "probe rod"), c => Assert.True(Underturf.Property.GroundShape.Of(Main).DistanceMetresTo(c.At) > PracticeBook.Default.Day.HandDigMetres));
        Assert.Contains(route.Steps.SelectMany(s => s.Efforts), e => e.How == "probe rod" && e.Caution.EndsWith("Not within 610 mm of gas main.", StringComparison.Ordinal));
    }

    [Fact]
    public void What_the_rod_is_kept_from_is_left_to_digging_by_hand()
    {
        var dig = PracticeBook.Default.Locating.Searching.Single(w => w.Name == "hand dig") with { SquareMetresPerMinute = 2 };
        var book = PracticeBook.Default with { Locating = PracticeBook.Default.Locating with { Searching = [.. PracticeBook.Default.Locating.Searching.Select(w => w.Name == dig.Name ? dig : w)] } };
        var dug = Route(book, Main).Steps.SelectMany(s => s.Efforts).Where(e => e.How == dig.Name).ToList();
        Assert.Contains(dug.SelectMany(e => e.Cells), c => Underturf.Property.GroundShape.Of(Main).DistanceMetresTo(c.At) < 0.6);
        Assert.Contains(dug, e => e.Caution.Contains("By hand only within 610 mm of gas main.", StringComparison.Ordinal));
    }

    [Fact]
    public void Among_roots_one_goes_slower_and_expects_to_find_less() => Assert.True(Route(Lime).LossMinutes > Route().LossMinutes);

    [Fact]
    public void A_palm_has_no_protected_ground() => Assert.Equal(Route().LossMinutes, Route(Tree(0.4) with { Label = "fan palm" }).LossMinutes, 9);

    [Fact]
    public void The_roots_are_named_where_the_search_reaches_them() =>
        Assert.Contains(Route(Lime).Steps.SelectMany(s => s.Efforts), e => e.Caution.Contains("Among the roots of lime: slowly, cut none.", StringComparison.Ordinal));

    [Fact]
    public void A_search_that_roots_slowed_ruled_out_less()
    {
        var search = new SearchFact { How = "probe rod", Where = [Spot], Within = new Length(2), Minutes = 8 };
        Assert.True(Here(Lime, search) > Here(search));
    }

    [Fact]
    public void A_rod_that_was_pushed_beside_a_mark_all_the_same_tells_as_much_as_elsewhere()
    {
        var search = new SearchFact { How = "probe rod", Where = [Spot], Within = new Length(0.4), Minutes = 8 };
        Assert.Equal(Here(search), Here(Main, search), 3);
    }

    [Fact]
    public void A_search_off_all_ground_says_nothing() =>
        Assert.Equal(Here(), Here(new SearchFact { How = "probe rod", Where = [new Position(4000, 4000)], Within = new Length(2), Minutes = 8 }), 9);

    private static double Here(params IEnumerable<Fact> notes) => Grounds.Within(Grounds.Corner([Trace(), .. notes]).Only(), Spot.EastMetres, Spot.NorthMetres, 2);

    private static SearchRoute Route(params IEnumerable<Fact> notes) => Route(PracticeBook.Default, notes);

    private static SearchRoute Route(PracticeBook book, params IEnumerable<Fact> notes) => Grounds.Corner([Trace(), .. notes]).Notebook(book).Locate().Value.Route!;

    private static IEnumerable<(Position At, double Minutes)> Searched(SearchRoute route, string how) => route.Steps.SelectMany(s => s.Efforts).Where(e => e.How == how).SelectMany(e => e.Cells);

    private static GroundFact Tree(double trunkMetres) => new() { Id = "lime", What = "tree", Label = "lime", Shape = [new Position(35, 9)], Trunk = new Length(trunkMetres) };

    private static TraceFact Trace() => new() { How = "wire tracer", Of = ["s1"], Route = [new Position(0, 0), new Position(20, 6), Spot], Ended = "swell" };
}
