using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Reasoning;

/// <summary>Which point of a mark, so that two people hold the tape at the same.</summary>
internal static class MarkWords
{
    /// <summary>Further from a corner than this it is some point of an edge.</summary>
    private const double AtCornerMetres = 0.3;

    public static string Of(PropertyView view, string mark, Position? from)
    {
        var name = view.Name(mark);
        if (from is not { } at || !view.Ground.TryGetValue(view.Identity.Of(mark), out var ground) || ground.Shape.Count < 2)
        {
            return name;
        }

        var corner = ground.Shape.MinBy(at.DistanceMetresTo);
        var isLine = ground.Shape.Count > 1 && !GroundShape.Of(ground).Closed;
        var isEnd = isLine && (corner == ground.Shape[0] || corner == ground.Shape[^1]);
        return at.DistanceMetresTo(corner) > AtCornerMetres ? $"a point of {name}" : $"the {Wind(ground.Shape, corner)} {(isEnd ? "end" : isLine ? "bend" : "corner")} of {name}{Apart(ground.Shape, corner)}";
    }

    /// <summary>At the end of something long two corners have one wind: which of them.</summary>
    private static string Apart(IReadOnlyList<Position> shape, Position corner)
    {
        var twins = shape.Where(other => other != corner && Wind(shape, other) == Wind(shape, corner)).ToList();
        if (twins.Count == 0)
        {
            return string.Empty;
        }

        var twin = twins.MinBy(corner.DistanceMetresTo);
        var (east, north) = (corner.EastMetres - twin.EastMetres, corner.NorthMetres - twin.NorthMetres);
        return Math.Abs(north) > Math.Abs(east) ? (north > 0 ? ", the northern one" : ", the southern one") : east > 0 ? ", the eastern one" : ", the western one";
    }

    private static string Wind(IReadOnlyList<Position> shape, Position corner) =>
        Winds.Of(corner.EastMetres - shape.Average(p => p.EastMetres), corner.NorthMetres - shape.Average(p => p.NorthMetres));
}
