using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Simulation;

/// <summary>Many made-up properties with a hidden valve each: whether the ground that is told holds it, and what searching for it costs.</summary>
public static class SearchStudy
{
    /// <summary>Two places count as humps where each has this much and they lie so far apart.</summary>
    private const double HumpShare = 0.08, HumpMetres = 8;

    /// <summary>What it costs to leave it hidden where it has to be found: more than a day's search.</summary>
    public const double MustBeFoundMinutes = 1500;

    public static IReadOnlyList<int> Sizes { get; } = [12, 36, 100];

    /// <summary>Weights as good as fixed: nothing is learned from what was found.</summary>
    private const double Fixed = 1e-4;

    public static string Heading => "| stations | properties | within 50 % | within 80 % | within 95 % | ground of 80 %, m2 | log score | with fixed weights |\n|---|---|---|---|---|---|---|---|";

    public static string SearchHeading => "| stations | valves | several humps | own: search + travel, min | given up | outwards | given up | along the path | given up | loss, own / outwards | own / path | humps: own / outwards | own / path |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|";

    /// <summary>One property: at which level the truth lies, how dense the belief is there, and what the searches cost.</summary>
    /// <param name="Level">The least credible ground that holds it has this probability.</param>
    /// <param name="Own">Cost of the notebook's search that stops where it no longer pays.</param>
    /// <param name="OwnToTheEnd">Cost of its search where it has to be found.</param>
    /// <param name="Outwards">Cost of the rule by when it gives up.</param>
    public sealed record Case(
        int Stations, double Level, double Square80, double LogScore, double LogScoreFixed, bool Humps, SearchCost Own, SearchCost OwnToTheEnd, IReadOnlyList<SearchCost> Outwards, IReadOnlyList<SearchCost> AlongPath, double Told, double Least, double LeastToTheEnd);

    public static IReadOnlyList<Case> Block(ulong first, int count, int stations, PracticeBook book) => [.. Enumerable.Range(0, count).Select(i => One(first + (ulong)i, stations, book))];

    public static Case One(ulong seed, int stations, PracticeBook book)
    {
        var scene = SearchScene.Make(seed, stations, book);
        var from = new Position(0, 0);
        LocationAnswer Ask(Func<LocatingPractice, LocatingPractice> but) => Notebook.Open(scene.Log, book with { Locating = but(SearchesOnly(book.Locating)) }).Locate(scene.Station, from).Value;
        HiddenThing Sought(LocationAnswer answer) => answer.Things.Single(t => t.Station == scene.Station);
        var answer = Ask(b => b);
        var toTheEnd = Ask(b => b with { UnfoundMinutes = MustBeFoundMinutes });
        var thing = Sought(answer);
        var (heat, cell) = (thing.Heat!, CellOf(thing.Heat!, scene.Truth));
        var guess = heat.Middle(Enumerable.Range(0, heat.Shares.Length).MaxBy(c => heat.Shares[c]));
        return new Case(
            stations,
            heat.Shares.Where(s => s > heat.Shares[cell]).Sum() / heat.Shares.Sum(),
            thing.Credible.First(c => c.Probability == 0.8).SquareMetres,
            Score(heat, cell),
            Score(Sought(Ask(b => b with { WeightSpread = Fixed })).Heat!, cell),
            HasHumps(thing),
            SearchTrial.Own(scene, answer, from, book),
            SearchTrial.Own(scene, toTheEnd, from, book),
            SearchTrial.Outwards(scene, guess, from, book),
            SearchTrial.AlongPath(scene, from, book),
            answer.Route?.LossMinutes ?? book.Locating.UnfoundMinutes,
            answer.Route?.LeastMinutes ?? book.Locating.UnfoundMinutes,
            toTheEnd.Route?.LeastMinutes ?? MustBeFoundMinutes);
    }

    /// <summary>Tracing and listening are left out: what is compared is how one searches with what is known.</summary>
    private static LocatingPractice SearchesOnly(LocatingPractice book) =>
        book with { Tracing = [.. book.Tracing.Select(t => t with { Owned = false })], Signs = [.. book.Signs.Select(s => s with { Owned = false })] };

    public static string Row(IReadOnlyList<Case> cases) => string.Create(
        CultureInfo.InvariantCulture,
        $"| {cases[0].Stations} | {cases.Count} | {Within(cases, 0.5)} | {Within(cases, 0.8)} | {Within(cases, 0.95)} | {cases.Average(c => c.Square80):0} | {cases.Average(c => c.LogScore):0.00} | {cases.Average(c => c.LogScoreFixed):0.00} |");

    /// <summary>Each rule gives up when, over all these properties, it is best for it.</summary>
    /// <param name="unfoundMinutes">What it costs to leave it hidden.</param>
    public static string SearchRow(IReadOnlyList<Case> cases, double unfoundMinutes)
    {
        var (own, outwards, path) = (Own(unfoundMinutes), BestRing(cases, c => c.Outwards, unfoundMinutes), BestRing(cases, c => c.AlongPath, unfoundMinutes));
        var humps = cases.Where(c => c.Humps).ToList();
        string Cost(Func<Case, SearchCost> of) => string.Create(CultureInfo.InvariantCulture, $"{cases.Average(c => of(c).SearchMinutes):0.0} + {cases.Average(c => of(c).TravelMinutes):0.0} | {100 * cases.Average(c => of(c).Missing):0} %");
        string Ratio(IReadOnlyList<Case> of, Func<Case, SearchCost> rule) => of.Count == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{of.Sum(c => own(c).Loss(unfoundMinutes)) / of.Sum(c => rule(c).Loss(unfoundMinutes)):0.000}");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {cases[0].Stations} | {cases.Count} | {humps.Count} | {Cost(own)} | {Cost(c => c.Outwards[outwards])} | {Cost(c => c.AlongPath[path])} | {Ratio(cases, c => c.Outwards[outwards])} | {Ratio(cases, c => c.AlongPath[path])} | {Ratio(humps, c => c.Outwards[outwards])} | {Ratio(humps, c => c.AlongPath[path])} |");
    }

    public static Func<Case, SearchCost> Own(double unfoundMinutes) => unfoundMinutes == MustBeFoundMinutes ? c => c.OwnToTheEnd : c => c.Own;

    /// <summary>
    /// The least loss that its belief lets anybody expect who only looks and probes, ways for nothing. To plan anew on the way lowers it no further:
    /// until it is found every search ends the same way, in vain, which the plan has counted on.
    /// </summary>
    public static double Least(Case one, double unfoundMinutes) => unfoundMinutes == MustBeFoundMinutes ? one.LeastToTheEnd : one.Least;

    /// <summary>Expected loss of the walk beside the least that it could be if no way took time.</summary>
    public static double TravelRatio(IReadOnlyList<Case> cases) => cases.Sum(c => c.Told) / cases.Sum(c => c.Least);

    public static int BestRing(IReadOnlyList<Case> cases, Func<Case, IReadOnlyList<SearchCost>> rule, double unfoundMinutes) =>
        Enumerable.Range(0, SearchTrial.Rings + 1).MinBy(r => cases.Sum(c => rule(c)[r].Loss(unfoundMinutes)));

    public static double Share(IReadOnlyList<Case> cases, double level) => cases.Count(c => c.Level < level) / (double)cases.Count;

    private static string Within(IReadOnlyList<Case> cases, double level) => string.Create(CultureInfo.InvariantCulture, $"{100 * Share(cases, level):0.0} %");

    private static bool HasHumps(HiddenThing thing) =>
        thing.Places.Where(p => p.Probability >= HumpShare).ToList() is var places && places.Any(p => places.Any(q => p.At!.Value.DistanceMetresTo(q.At!.Value) >= HumpMetres));

    /// <summary>Natural logarithm of the density at the truth, a square metre.</summary>
    private static double Score(HeatMap heat, int cell) => Math.Log(Math.Max(heat.Shares[cell], 1e-300) / heat.Shares.Sum() / (heat.SideMetres * heat.SideMetres));

    private static int CellOf(HeatMap heat, Position at) =>
        (Math.Clamp((int)((at.NorthMetres - heat.Corner.NorthMetres) / heat.SideMetres), 0, heat.Deep - 1) * heat.Wide) + Math.Clamp((int)((at.EastMetres - heat.Corner.EastMetres) / heat.SideMetres), 0, heat.Wide - 1);
}
