namespace Underturf.Numerics;

/// <summary>Picks cells that lead a group: no two closer than a radius, the best ones first.</summary>
internal sealed class StopLeaders
{
    private readonly double[] x;
    private readonly double[] y;
    private readonly double[] weights;
    private readonly int[] cells;
    private readonly double[] nearest;
    private readonly int[] leader;
    private readonly double total;

    /// <param name="cells">The best first.</param>
    public StopLeaders(double[] x, double[] y, double[] weights, ReadOnlySpan<int> cells)
    {
        (this.x, this.y, this.weights, this.cells) = (x, y, weights, cells.ToArray());
        (nearest, leader) = (new double[cells.Length], new int[cells.Length]);
        foreach (var cell in cells)
        {
            total += weights[cell];
        }
    }

    public List<int> Leaders { get; } = [];

    /// <returns>False where so many leaders are not enough.</returns>
    public bool Cover(double radius, int most, double leftShare)
    {
        Leaders.Clear();
        Array.Fill(nearest, double.PositiveInfinity);
        var (left, square) = (total, radius * radius);
        for (var k = 0; k < cells.Length && left > leftShare * total; k++)
        {
            if (nearest[k] <= square)
            {
                continue;
            }

            if (Leaders.Count == most)
            {
                return false;
            }

            left -= Lead(k, square);
        }

        return true;
    }

    /// <summary>The cells of each leader, those too far from any left out.</summary>
    public List<int>[] Groups(double mostMetres)
    {
        List<int>[] groups = [.. Leaders.Select(_ => new List<int>())];
        for (var k = 0; k < cells.Length; k++)
        {
            if (nearest[k] <= mostMetres * mostMetres)
            {
                groups[leader[k]].Add(cells[k]);
            }
        }

        return groups;
    }

    /// <summary>Weight that had no leader within the radius and now has.</summary>
    private double Lead(int first, double square)
    {
        var (gained, x0, y0) = (0.0, x[cells[first]], y[cells[first]]);
        for (var k = 0; k < cells.Length; k++)
        {
            var (dx, dy) = (x[cells[k]] - x0, y[cells[k]] - y0);
            var away = (dx * dx) + (dy * dy);
            if (away < nearest[k])
            {
                gained += nearest[k] > square && away <= square ? weights[cells[k]] : 0;
                (nearest[k], leader[k]) = (away, Leaders.Count);
            }
        }

        Leaders.Add(first);
        return gained;
    }
}
