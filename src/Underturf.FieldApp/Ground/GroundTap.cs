using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>Where a map was tapped, and how many metres a pixel of it spans there.</summary>
public readonly record struct GroundTap(Position At, double MetresPerPixel);

/// <summary>What a tap means: which thing it is on, and which known point or edge it is at.</summary>
public static class GroundReach
{
    /// <summary>Half of what a thumb covers: a target is 48 pixels wide.</summary>
    private const double ThumbPixels = 24;

    /// <summary>A point is caught from further off than an edge, so that corners are found along edges.</summary>
    private const double SnapPixels = 16;

    /// <summary>The thing under a thumb: points before lines, lines before outlines, the last drawn before those below it.</summary>
    public static GroundFeature? Under(GroundPlan plan, GroundTap tap)
    {
        var reachMetres = ThumbPixels * tap.MetresPerPixel;
        return Nearest(plan, tap.At, GroundForm.Point, reachMetres)
            ?? Nearest(plan, tap.At, GroundForm.Line, reachMetres / 2)
            ?? plan.Features.LastOrDefault(f => f.Form == GroundForm.Outline && Holds(f.Shape, tap.At));
    }

    /// <summary>The point or edge of something known that a tap is at; the tap itself where there is none.</summary>
    /// <param name="without">The thing that is being moved: it does not hold itself.</param>
    public static (Position At, GroundFeature? To) Snap(GroundPlan plan, GroundTap tap, string? without = null)
    {
        var known = plan.Features.Where(f => f.Id != without).ToList();
        var reachMetres = SnapPixels * tap.MetresPerPixel;
        var points = known.SelectMany(f => f.Shape.Select(p => (At: p, To: f)));
        var edges = known.SelectMany(f => Edges(f).Select(e => (At: OnEdge(e.From, e.To, tap.At), To: f)));
        return Best(points, tap.At, reachMetres) ?? Best(edges, tap.At, reachMetres * 0.75) ?? (tap.At, null);
    }

    /// <summary>The length of a line through positions; closed where it is an outline.</summary>
    public static double LengthMetres(IReadOnlyList<Position> line, bool closed = false) =>
        line.Zip(line.Skip(1), (from, to) => from.DistanceMetresTo(to)).Sum() + (closed && line.Count > 2 ? line[^1].DistanceMetresTo(line[0]) : 0);

    private static (Position At, GroundFeature? To)? Best(IEnumerable<(Position At, GroundFeature To)> candidates, Position tap, double reachMetres)
    {
        var near = candidates.Where(c => c.At.DistanceMetresTo(tap) <= reachMetres).ToList();
        return near.Count == 0 ? null : near.MinBy(c => c.At.DistanceMetresTo(tap));
    }

    private static GroundFeature? Nearest(GroundPlan plan, Position tap, GroundForm form, double reachMetres) => plan.Features
        .Where(f => f.Form == form)
        .Select(f => (Thing: f, Metres: form == GroundForm.Point ? f.Shape[0].DistanceMetresTo(tap) : Edges(f).Min(e => OnEdge(e.From, e.To, tap).DistanceMetresTo(tap))))
        .Where(c => c.Metres <= reachMetres)
        .OrderBy(c => c.Metres)
        .Select(c => c.Thing)
        .FirstOrDefault();

    private static IEnumerable<(Position From, Position To)> Edges(GroundFeature thing) => thing.Form == GroundForm.Point
        ? []
        : thing.Shape.Zip(thing.Shape.Skip(1)).Concat(thing.Form == GroundForm.Outline ? [(thing.Shape[^1], thing.Shape[0])] : []);

    /// <summary>The foot of the perpendicular, or the nearer end.</summary>
    private static Position OnEdge(Position from, Position to, Position at)
    {
        var (east, north) = (to.EastMetres - from.EastMetres, to.NorthMetres - from.NorthMetres);
        var square = (east * east) + (north * north);
        var share = square == 0 ? 0 : Math.Clamp((((at.EastMetres - from.EastMetres) * east) + ((at.NorthMetres - from.NorthMetres) * north)) / square, 0, 1);
        return new Position(from.EastMetres + (share * east), from.NorthMetres + (share * north));
    }

    /// <summary>Whether an outline holds a position: a ray to the east crosses it an odd number of times.</summary>
    private static bool Holds(IReadOnlyList<Position> outline, Position at)
    {
        var inside = false;
        for (int i = 0, before = outline.Count - 1; i < outline.Count; before = i++)
        {
            var (a, b) = (outline[i], outline[before]);
            if (a.NorthMetres > at.NorthMetres != b.NorthMetres > at.NorthMetres
                && at.EastMetres < ((b.EastMetres - a.EastMetres) * (at.NorthMetres - a.NorthMetres) / (b.NorthMetres - a.NorthMetres)) + a.EastMetres)
            {
                inside = !inside;
            }
        }

        return inside;
    }
}
