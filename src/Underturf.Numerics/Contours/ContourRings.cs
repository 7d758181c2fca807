namespace Underturf.Numerics;

/// <summary>
/// Closed lines at which values on a grid pass a level, by marching squares with straight interpolation between neighbours (Lorensen and Cline's
/// marching cubes of 1987, in the plane). Outside the grid nothing is above the level, so that every line closes. Points are in cells from the middle of the first one.
/// </summary>
public static class ContourRings
{
    /// <param name="values">Row by row.</param>
    /// <param name="wide">Values in a row.</param>
    /// <param name="level">Above zero.</param>
    /// <returns>Rings, their first point not repeated; around what is above the level anticlockwise where rows go north, around holes clockwise.</returns>
    public static IReadOnlyList<IReadOnlyList<(double X, double Y)>> Of(ReadOnlySpan<double> values, int wide, double level)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(level);
        var grid = new Padded(values, wide, level);
        var next = new Dictionary<(int X, int Y, bool Across), (int X, int Y, bool Across)>();
        for (var y = -1; y < grid.Deep; y++)
        {
            for (var x = -1; x < wide; x++)
            {
                Square(grid, x, y, next);
            }
        }

        var rings = new List<IReadOnlyList<(double, double)>>();
        while (next.Count > 0)
        {
            var ring = new List<(double, double)>();
            var edge = next.First().Key;
            while (next.Remove(edge, out var to))
            {
                ring.Add(grid.Crossing(edge));
                edge = to;
            }

            rings.Add(ring);
        }

        return rings;
    }

    /// <summary>Lines through one square of four neighbours, with what is above on their left. An edge is named by its lower left end and whether it lies across.</summary>
    private static void Square(Padded grid, int x, int y, Dictionary<(int X, int Y, bool Across), (int X, int Y, bool Across)> next)
    {
        var (south, north, west, east) = ((x, y, true), (x, y + 1, true), (x, y, false), (x + 1, y, false));
        var corners = (grid.Above(x, y) ? 1 : 0) | (grid.Above(x + 1, y) ? 2 : 0) | (grid.Above(x + 1, y + 1) ? 4 : 0) | (grid.Above(x, y + 1) ? 8 : 0);
        switch (corners)
        {
            case 1: next[south] = west; break;
            case 2: next[east] = south; break;
            case 3: next[east] = west; break;
            case 4: next[north] = east; break;
            case 5: next[south] = east; next[north] = west; break;
            case 6: next[north] = south; break;
            case 7: next[north] = west; break;
            case 8: next[west] = north; break;
            case 9: next[south] = north; break;
            case 10: next[east] = north; next[west] = south; break;
            case 11: next[east] = north; break;
            case 12: next[west] = east; break;
            case 13: next[south] = east; break;
            case 14: next[west] = south; break;
            default: break;
        }
    }

    private readonly ref struct Padded(ReadOnlySpan<double> values, int wide, double level)
    {
        private readonly ReadOnlySpan<double> values = values;

        public int Deep => values.Length / wide;

        public bool Above(int x, int y) => Value(x, y) > level;

        public (double X, double Y) Crossing((int X, int Y, bool Across) edge)
        {
            var (first, second) = (Value(edge.X, edge.Y), edge.Across ? Value(edge.X + 1, edge.Y) : Value(edge.X, edge.Y + 1));
            var share = (level - first) / (second - first);
            return edge.Across ? (edge.X + share, edge.Y) : (edge.X, edge.Y + share);
        }

        private double Value(int x, int y) => x < 0 || y < 0 || x >= wide || y >= Deep ? 0 : values[(y * wide) + x];
    }
}
