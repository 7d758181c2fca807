namespace Underturf.Reasoning.Location;

/// <summary>The smallest ground that holds a thing with given probabilities: the cells of highest density.</summary>
internal static class CredibleRegion
{
    private static readonly double[] Levels = [0.5, 0.8, 0.95];

    /// <summary>For each level the ground in square metres, and the density of its least cell.</summary>
    public static IReadOnlyList<(double Probability, double SquareMetres, double Density)> Of(double[] shares, GroundCells cells)
    {
        var (densities, order) = (new double[shares.Length], new int[shares.Length]);
        var total = 0.0;
        for (var c = 0; c < shares.Length; c++)
        {
            (densities[c], order[c]) = (-shares[c] / cells.Area(c), c);
            total += shares[c];
        }

        Array.Sort(densities, order);
        var found = new List<(double, double, double)>();
        var (sum, area) = (0.0, 0.0);
        for (var i = 0; i < order.Length && found.Count < Levels.Length; i++)
        {
            sum += shares[order[i]];
            area += cells.Area(order[i]);
            while (found.Count < Levels.Length && sum >= Levels[found.Count] * total)
            {
                found.Add((Levels[found.Count], area, -densities[i]));
            }
        }

        return found;
    }
}
