using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Location;

/// <summary>Says where hidden things lie.</summary>
/// <param name="questions">What the diagnosis asks, where that was worked out.</param>
/// <param name="memory">What earlier answers left.</param>
internal sealed class LocationWriter(PropertyHistory history, PropertyView view, PracticeBook practice, IReadOnlyList<OpenQuestion> questions, LocationMemory memory)
{
    private const int MostPlaces = 5;

    /// <summary>Of what to do next two dozen outcomes are thought through, each over all squares.</summary>
    private const int MostSquares = 10_000;

    /// <summary>Places less likely than this are not listed, after the first.</summary>
    private const double Listed = 0.01;

    /// <summary>Marks whose weight moved by less than this many of its spreads taught nothing worth telling.</summary>
    private const double Told = 0.5;

    private readonly LocatingPractice book = practice.Locating;
    private readonly NameFinder names = new(view);
    private readonly WhereWords words = new(view, history.Facts.UsesUsUnits);

    /// <param name="wanted">Id or name of a thing, or of its station; all where nothing is said.</param>
    /// <param name="at">Where one stands; the first controller where nothing is said.</param>
    /// <returns>A notice where there is nothing to look for: that is no fault of anybody.</returns>
    public Outcome<LocationAnswer> Write(string? wanted, Position? at)
    {
        var groups = new SoughtFinder(history, view, practice, questions).Find();
        var asked = groups.Where(g => wanted is null || Means(g, wanted.Trim())).ToList();
        if (asked.Count == 0)
        {
            return groups.Count == 0
                ? new Problem("property", "has nothing hidden", "Note what is looked for: {\"kind\":\"sought\",\"id\":\"x1\",\"what\":\"valve\"}; the valve of a station that was never found is looked for without a note", Severity.Notice)
                : new Problem($"thing {Problem.Quote(wanted!)}", "is not among what is hidden", $"Name one of: {string.Join(", ", groups.Select(g => g.Name).Take(12))}", names.Meant(view.Ids, wanted!).Count > 0 ? Severity.Notice : Severity.Error);
        }

        var ground = new GroundFinder(history, view, book, memory);
        return ground.Find() is { } cells
            ? Write(asked, groups.Count(g => g.Things[0].Stretches is null), cells, ground, at ?? Start(cells))
            : new Problem("ground", "has no position and no spot noted", "Note what is on the ground, a controller or box with its position, or spots: {\"kind\":\"spot\",\"id\":\"p1\",\"label\":\"hedge by the gate\",\"beside\":[\"bed\"]}");
    }

    private LocationAnswer Write(IReadOnlyList<SoughtGroup> asked, int groups, GroundCells cells, GroundFinder ground, Position at)
    {
        var careful = Careful(cells);
        var finder = new BeliefFinder(history, view, practice, cells, careful, ground, groups, memory);
        var beliefs = asked.Select(g => finder.Of(g, asked.Count == 1)).ToList();
        var things = beliefs.SelectMany(b => b.Group.Things.Select((t, i) => Thing(t, i, b.Belief, b.Told, cells))).ToList();
        var planner = new SearchPlanner(practice, cells, careful);
        IReadOnlyList<IReadOnlyList<double[]?>> covered = [.. asked.SelectMany(g => g.Things.Select((_, i) => planner.Ways.Select(way => finder.Clues.Covered(g, i, way)).ToList()))];
        IReadOnlyList<double[]> shares = [.. beliefs.SelectMany(b => b.Belief.Shares)];
        var route = planner.Ways.Count == 0 ? null : new RouteWriter(words, view, planner, cells, careful).Write(planner.Task(shares, covered), at);
        var choices = beliefs.Count == 1 ? Choices(asked[0], beliefs[0].Belief, cells, covered, at) : [];
        return new LocationAnswer(Notebook.Engine, practice.Version, things, Effects(finder.Learned), finder.Found, route is { Steps.Count: > 0 } ? route : null, choices)
        {
            Heat = things.Count == 1 ? things[0].Heat : Heat(RowMath.Sum(shares), cells),
        };
    }

    /// <summary>Weighed on squares that are large enough for there to be few of them.</summary>
    private IReadOnlyList<SearchChoice> Choices(SoughtGroup asked, LocationBelief belief, GroundCells cells, IReadOnlyList<IReadOnlyList<double[]?>> covered, Position at)
    {
        var factor = (int)Math.Ceiling(Math.Sqrt(cells.Count / (double)MostSquares));
        if (cells.IsGrid && factor > 1)
        {
            var coarse = new CoarserGround(cells, factor);
            (cells, belief) = (coarse.Cells, belief.On(coarse));
            covered = [.. covered.Select(ways => ways.Select(so => so is null ? null : coarse.Means(so)).ToList())];
        }

        return new ChoiceFinder(words, practice, cells, new SearchPlanner(practice, cells, Careful(cells))).Find(asked, belief, covered, at);
    }

    private CarefulGround Careful(GroundCells cells) => new(view, practice, cells, history.Facts.UsesUsUnits);

    /// <summary>At the first controller that has a position; without one in the middle of the ground.</summary>
    private Position Start(GroundCells cells) =>
        view.Controllers.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => c.Value.Position).FirstOrDefault(p => p is not null) is { } controller && cells.IsGrid ? controller : cells.Middle(cells.Count / 2);

    private HiddenThing Thing(Sought thing, int index, LocationBelief belief, IReadOnlyList<Clue> told, GroundCells cells)
    {
        var shares = belief.Shares[index];
        var pieces = new PieceFinder(cells, book.StopMetres).Find(shares, MostPlaces);
        var credible = CredibleRegion.Of(shares, cells);
        var places = pieces.Where((p, i) => i == 0 || p.Share >= Listed).Select(p => Place(p, cells)).ToList();
        return new HiddenThing(thing.Id, thing.What, thing.Name, thing.Station, belief.None[index], places, [.. credible.Select(c => new CredibleGround(c.Probability, c.SquareMetres))], Notes(told, index, pieces, cells))
        {
            Heat = Heat(shares, cells, credible),
        };
    }

    private LikelyPlace Place(GroundPiece piece, GroundCells cells)
    {
        var at = cells.Middle(piece.Middle);
        return cells.IsGrid
            ? new LikelyPlace(at, words.Say(at), book.StopMetres, piece.Share, null)
            : new LikelyPlace(null, view.Name(cells.Spots[piece.Middle]), Math.Sqrt(cells.Area(piece.Middle)), piece.Share, cells.Spots[piece.Middle]);
    }

    private static IReadOnlyList<PlaceNote> Notes(IReadOnlyList<Clue> told, int thing, IReadOnlyList<GroundPiece> pieces, GroundCells cells) =>
        pieces.Count == 0 ? [] : [.. told.Where(c => c.Cases.Any(k => k.Layers[thing] is not null)).Select(c => new PlaceNote(c.Entries, c.Say, Weight(c, thing, pieces[0].Middle, cells)))];

    /// <summary>At the best place beside the average over the ground.</summary>
    private static double Weight(Clue clue, int thing, int cell, GroundCells cells)
    {
        var layer = Layer.Sum([.. clue.Cases.Select(k => (k.Weight, k.Layers[thing]))], cells.Count);
        return Math.Log10(Math.Max(layer.Cells[cell], 1e-12) / Math.Max(cells.Mean(layer.Cells), 1e-12));
    }

    private IReadOnlyList<MarkEffect> Effects(LearnedMarks learned) =>
    [
        .. book.Marks
            .Select((mark, k) => new MarkEffect(mark.Name, mark.Say, mark.ReachMetres, mark.Weight, learned.Weights.Mean[k], learned.Weights.Spread[k], learned.FoundNear[k], learned.GroundNear[k]))
            .Where(e => Math.Abs(e.Here - e.Usual) >= Told * e.Spread)
            .OrderByDescending(e => Math.Abs(e.Here - e.Usual)),
    ];

    private static HeatMap? Heat(double[] shares, GroundCells cells) => Heat(shares, cells, CredibleRegion.Of(shares, cells));

    private static HeatMap? Heat(double[] shares, GroundCells cells, IReadOnlyList<(double Probability, double SquareMetres, double Density)> credible) => cells.IsGrid
        ? new HeatMap(cells.Corner, cells.SideMetres, cells.Wide, shares, [.. credible.Select(c => (c.Probability, c.Density * cells.SideMetres * cells.SideMetres))])
        : null;

    private bool Means(SoughtGroup group, string wanted) =>
        Is(group.Name, wanted)
        || group.Things.Any(t => t.Id == view.Identity.Of(wanted) || Is(t.Name, wanted) || (t.Station is { } s && (names.CanMean(s, wanted) || Is($"{t.What} {view.StationNumber(s)}", wanted))));

    private static bool Is(string name, string wanted) => string.Equals(name, wanted, StringComparison.OrdinalIgnoreCase);
}
