using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Papers;

/// <summary>Rings sorted into polygons: an outline, anticlockwise, with the holes that lie in it, clockwise, as RFC 7946 wants them.</summary>
internal static class Nested
{
    public static IReadOnlyList<IReadOnlyList<IReadOnlyList<Position>>> Of(IReadOnlyList<IReadOnlyList<Position>> rings)
    {
        var outlines = rings.Where(r => TwiceArea(r) > 0).OrderBy(TwiceArea).Select(r => new List<IReadOnlyList<Position>> { r }).ToList();
        foreach (var hole in rings.Where(r => TwiceArea(r) < 0))
        {
            outlines.FirstOrDefault(o => GroundShape.Outline(o[0]).Contains(hole[0]))?.Add(hole);
        }

        return outlines;
    }

    /// <summary>Above zero for an anticlockwise ring.</summary>
    private static double TwiceArea(IReadOnlyList<Position> ring) =>
        ring.Select((p, i) => (p.EastMetres * ring[(i + 1) % ring.Count].NorthMetres) - (ring[(i + 1) % ring.Count].EastMetres * p.NorthMetres)).Sum();
}
