using Underturf.FieldLog;

namespace Underturf.Reasoning.Location;

/// <summary>A grid of ground in larger squares, of so many cells a side.</summary>
internal sealed class CoarserGround
{
    private readonly int[] squareOf;

    public CoarserGround(GroundCells fine, int factor)
    {
        var northEast = new Position(fine.Corner.EastMetres + (fine.Wide * fine.SideMetres), fine.Corner.NorthMetres + (fine.Deep * fine.SideMetres));
        Cells = GroundCells.Grid(fine.Corner, northEast, factor * fine.SideMetres);
        squareOf = [.. Enumerable.Range(0, fine.Count).Select(c => (c / fine.Wide / factor * Cells.Wide) + (c % fine.Wide / factor))];
    }

    public GroundCells Cells { get; }

    /// <summary>For each square what its cells add up to.</summary>
    public double[] Sums(double[] values)
    {
        var sums = new double[Cells.Count];
        for (var c = 0; c < values.Length; c++)
        {
            sums[squareOf[c]] += values[c];
        }

        return sums;
    }

    /// <summary>For each square the mean of its cells.</summary>
    public double[] Means(double[] values)
    {
        var (sums, counts) = (Sums(values), new int[Cells.Count]);
        foreach (var square in squareOf)
        {
            counts[square]++;
        }

        return [.. sums.Select((sum, square) => sum / Math.Max(1, counts[square]))];
    }
}
