using Underturf.FieldLog;

namespace Underturf.Papers;

/// <summary>Rings sorted into polygons: an outline, anticlockwise, with the holes that lie in it, clockwise, as RFC 7946 wants them.</summary>
internal static class Nested
{
    public static IReadOnlyList<IReadOnlyList<IReadOnlyList<Position>>> Of(IReadOnlyList<IReadOnlyList<Position>> rings)
    {
        var outlines = rings.Where(r => TwiceArea(r) > 0).OrderBy(TwiceArea).Select(r => new List<IReadOnlyList<Position>> { r }).ToList();
        foreach (var hole in rings.Where(r => TwiceArea(r) < 0))
        {
            outlines.FirstOrDefault(o => Contains(o[0], hole[0]))?.Add(hole);
        }

        return outlines;
    }

    /// <summary>Above zero for an anticlockwise ring.</summary>
    private static double TwiceArea(IReadOnlyList<Position> ring) =>
        ring.Select((p, i) => (p.EastMetres * ring[(i + 1) % ring.Count].NorthMetres) - (ring[(i + 1) % ring.Count].EastMetres * p.NorthMetres)).Sum();

    private static bool Contains(IReadOnlyList<Position> ring, Position at)
    {
        var inside = false;
        for (var i = 0; i < ring.Count; i++)
        {
            var (a, b) = (ring[i], ring[(i + 1) % ring.Count]);
            inside ^= (a.NorthMetres > at.NorthMetres) != (b.NorthMetres > at.NorthMetres)
                && at.EastMetres < a.EastMetres + ((b.EastMetres - a.EastMetres) * (at.NorthMetres - a.NorthMetres) / (b.NorthMetres - a.NorthMetres));
        }

        return inside;
    }
}
