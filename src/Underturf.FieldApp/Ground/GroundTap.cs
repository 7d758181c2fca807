using Underturf.FieldLog;
using Underturf.Property;

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
            ?? plan.Features.LastOrDefault(f => f.Lies.Contains(tap.At));
    }

    /// <summary>The point or edge of something known that a tap is at; the tap itself where there is none.</summary>
    /// <param name="without">The thing that is being moved: it does not hold itself.</param>
    public static (Position At, GroundFeature? To) Snap(GroundPlan plan, GroundTap tap, string? without = null)
    {
        var known = plan.Features.Where(f => f.Id != without).ToList();
        var reachMetres = SnapPixels * tap.MetresPerPixel;
        var points = known.SelectMany(f => f.Shape.Select(p => (At: p, To: f)));
        var edges = known.SelectMany(f => Edges(f).Select(e => (At: GroundShape.Foot(e.From, e.To, tap.At), To: f)));
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
        .Select(f => (Thing: f, Metres: f.Lies.DistanceMetresTo(tap)))
        .Where(c => c.Metres <= reachMetres)
        .OrderBy(c => c.Metres)
        .Select(c => c.Thing)
        .FirstOrDefault();

    private static IEnumerable<(Position From, Position To)> Edges(GroundFeature thing) => thing.Form == GroundForm.Point ? [] : thing.Lies.Sides();
}
