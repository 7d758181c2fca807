using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Location;

/// <summary>Reads the notes that say where the things of a group lie.</summary>
internal sealed class ClueFinder(PropertyHistory history, PropertyView view, PracticeBook practice, GroundCells cells, CarefulGround careful, IReadOnlyDictionary<string, Position> spots, int groups)
{
    private readonly LocatingPractice book = practice.Locating;
    private readonly LayerMaker maker = new(cells);
    private readonly OwnGroundFinder own = new(history, view, practice);

    public IReadOnlyList<Clue> Find(SoughtGroup group) => [.. Traces(group).Concat(Signs(group)).Concat(Searches(group))];

    private IEnumerable<Clue> Traces(SoughtGroup group)
    {
        foreach (var note in history.Facts.Traces)
        {
            var may = May(group, note.Fact.Of);
            var path = Places(note.Fact.Route, note.Fact.Spots);
            if (may.Contains(true) && path.Count > 0 && book.TracingBy(note.Fact.How) is { } way && book.End(note.Fact.Ended) is { } end)
            {
                yield return Trace(note.Entry.ToString(), path, may, way, end);
            }
        }
    }

    private Clue Trace(string entry, IReadOnlyList<Position> path, IReadOnlyList<bool> may, TracingWay way, TraceEnd end)
    {
        var spread = end.SpreadMetresBy(way);
        var last = maker.Near([GroundShape.Point(path[^1])], spread);
        return Clue.MadeByOne(entry, $"{way.Name}: {end.Say}", may, end.Hit, last, maker.Passed(path, way.Noticed, 2 * way.SpreadMetres, 2 * spread));
    }

    private IEnumerable<Clue> Signs(SoughtGroup group)
    {
        foreach (var note in history.Facts.Signs)
        {
            var may = May(group, note.Fact.About);
            if (may.Contains(true) && book.Sign(note.Fact.How) is var (sign, perceived) && Sign(note, group.Things[0].Station, may, sign, perceived, note.Fact.About is null ? 1.0 / Math.Max(1, groups) : 1) is { } clue)
            {
                yield return clue;
            }
        }
    }

    /// <param name="share">Chance that this group is meant where nothing is said.</param>
    private Clue? Sign(Observed<SignFact> note, string? station, IReadOnlyList<bool> may, LocatingSign sign, bool perceived, double share)
    {
        var (fact, entry) = (note.Fact, note.Entry.ToString());
        var (points, spread) = (Places(fact.Where, fact.Spots), fact.Spread is { Metres: > 0 } noted ? noted.Metres : sign.SpreadMetres);
        return sign.Form switch
        {
            SignForm.Along => Along(fact, station) is { } along ? Clue.MadeByOne(entry, sign.Name, may, sign.Hit * share, along) : null,
            _ when points.Count == 0 => null,
            SignForm.Perceived => Perceived(entry, may, sign, perceived, maker.Unperceived(points, sign.Hit, spread)),
            SignForm.Order => points.Count > 1 ? Clue.MadeByOne(entry, sign.Name, may, sign.Hit * share, maker.Order(points, spread)) : null,
            _ => Clue.MadeByOne(entry, sign.Name, may, sign.Hit * share, maker.Near(fact.Spots.Count > 0 ? [.. points.Select(GroundShape.Point)] : [GroundShape.Outline(points)], spread)),
        };
    }

    /// <summary>From where the known path ends, if it passes the place; else straight from the place.</summary>
    private Layer? Along(SignFact fact, string? station)
    {
        if (fact.From is not { } place || fact.Distance is not { Metres: > 0 } distance || view.PositionOf(place) is not { } straight)
        {
            return null;
        }

        var (at, known, spread) = own.PathFrom(view.Identity.Of(place), station) ?? (straight, 0, 0);
        var error = fact.Spread is { Metres: > 0 } noted ? noted.Metres : book.AlongSpread * distance.Metres;
        return maker.Along(at, Math.Max(0, distance.Metres - known), practice.Wire.Detour, Math.Sqrt(Square(error) + Square(spread)));
    }

    private static double Square(double x) => x * x;

    /// <summary>Perceived is whatever is not unperceived of all of them.</summary>
    public static Clue Perceived(string entry, IReadOnlyList<bool> may, LocatingSign sign, bool perceived, Layer unperceived)
    {
        IReadOnlyList<Layer?> all = [.. may.Select(m => m ? unperceived : null)], none = [.. may.Select(_ => (Layer?)null)];
        return perceived
            ? new Clue([entry], sign.Name, [new ClueCase(1, none), new ClueCase(sign.Imagined - 1, all)])
            : new Clue([entry], sign.Otherwise!, [new ClueCase(1 - sign.Imagined, all)]);
    }

    /// <summary>What is hidden from a way of searching stays hidden from it, so that all searches in one way count together.</summary>
    private IEnumerable<Clue> Searches(SoughtGroup group)
    {
        foreach (var way in book.Searching)
        {
            var notes = history.Facts.Searches.Where(s => s.Fact.How == way.Name && s.Fact.Minutes > 0 && Places(s.Fact.Where, s.Fact.Spots).Count > 0 && May(group, s.Fact.About).Contains(true)).ToList();
            if (notes.Count > 0)
            {
                IReadOnlyList<Layer?> layers = [.. group.Things.Select((_, thing) => Covered(group, thing, way) is { } covered ? LayerMaker.Left(covered, way.Sees) : null)];
                yield return new Clue([.. notes.Select(s => s.Entry.ToString())], FormattableString.Invariant($"{way.Name}, {notes.Sum(s => s.Fact.Minutes!.Value):0.#} min, not found"), [new ClueCase(1, layers)]);
            }
        }
    }

    /// <summary>How often each cell was covered in one way while this thing was looked for; nothing where it never was.</summary>
    /// <param name="thing">Its number in the group.</param>
    public double[]? Covered(SoughtGroup group, int thing, SearchWay way)
    {
        double[]? covered = null;
        var pace = careful.Pace(way);
        foreach (var fact in history.Facts.Searches.Select(s => s.Fact).Where(f => f.How == way.Name && f.Minutes > 0 && May(group, f.About)[thing]))
        {
            var piece = maker.Piece(Places(fact.Where, fact.Spots), fact.Within?.Metres ?? (cells.IsGrid ? book.StopMetres / 2 : 0));
            foreach (var (cell, times) in Evenly(piece, way.SquareMetresPerMinute * fact.Minutes!.Value, pace))
            {
                (covered ??= new double[cells.Count])[cell] += times;
            }
        }

        return covered;
    }

    /// <summary>
    /// How often each cell of a piece was covered: alike, so that careful ground takes more of the time. Ground where the way is not used was left
    /// out, unless there is no other.
    /// </summary>
    private IEnumerable<(int Cell, double Times)> Evenly(IReadOnlyList<int> piece, double squareMetres, double[]? pace)
    {
        if (pace is not null && piece.All(c => pace[c] == 0))
        {
            pace = null;
        }

        IReadOnlyList<int> gone = pace is null ? piece : [.. piece.Where(c => pace[c] > 0)];
        var area = gone.Sum(c => cells.Area(c) / (pace?[c] ?? 1));
        return gone.Select(c => (c, squareMetres / area));
    }

    /// <summary>All of them where nothing is said.</summary>
    private IReadOnlyList<bool> May(SoughtGroup group, string? about) => about is not null ? May(group, [about]) : [.. group.Things.Select(_ => true)];

    /// <summary>Which things of the group a note about these ids can mean.</summary>
    private IReadOnlyList<bool> May(SoughtGroup group, IReadOnlyList<string> ids)
    {
        var known = ids.Select(view.Identity.Of).ToList();
        return [.. group.Things.Select(t => known.Contains(t.Id) || (t.Station is { } s && known.Contains(s)))];
    }

    private IReadOnlyList<Position> Places(IReadOnlyList<Position> where, IReadOnlyList<string> named) =>
        cells.IsGrid ? where : [.. named.Select(view.Identity.Of).Where(spots.ContainsKey).Select(s => spots[s])];
}
