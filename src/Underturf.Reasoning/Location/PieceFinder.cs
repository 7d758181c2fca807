namespace Underturf.Reasoning.Location;

/// <summary>A piece of ground that is searched at one stop.</summary>
/// <param name="Middle">Its middle cell.</param>
/// <param name="Cells">All its cells, none of them another's.</param>
internal sealed record GroundPiece(int Middle, IReadOnlyList<int> Cells, double Share);

/// <summary>Cuts the ground into the pieces that hold the most, best first.</summary>
internal sealed class PieceFinder(GroundCells cells, double sideMetres)
{
    private readonly int reach = cells.IsGrid ? Math.Max(0, (int)Math.Round((sideMetres / cells.SideMetres / 2) - 0.5)) : 0;

    public IReadOnlyList<GroundPiece> Find(double[] shares, int most)
    {
        var (left, pieces) = ((double[])shares.Clone(), new List<GroundPiece>());
        while (pieces.Count < most && Best(left) is { } piece)
        {
            pieces.Add(piece);
            foreach (var cell in piece.Cells)
            {
                left[cell] = 0;
            }
        }

        return pieces;
    }

    /// <summary>The square with the greatest sum; nothing where all is gone.</summary>
    private GroundPiece? Best(double[] shares)
    {
        var middle = cells.IsGrid ? BestSquare(shares) : Enumerable.Range(0, shares.Length).MaxBy(c => shares[c]);
        var held = Square(middle).Where(c => shares[c] > 0).ToList();
        return held.Count == 0 ? null : new GroundPiece(middle, held, held.Sum(c => shares[c]));
    }

    private IEnumerable<int> Square(int middle)
    {
        if (!cells.IsGrid)
        {
            yield return middle;
            yield break;
        }

        var (column, row) = (middle % cells.Wide, middle / cells.Wide);
        for (var r = Math.Max(0, row - reach); r <= Math.Min(cells.Deep - 1, row + reach); r++)
        {
            for (var c = Math.Max(0, column - reach); c <= Math.Min(cells.Wide - 1, column + reach); c++)
            {
                yield return (r * cells.Wide) + c;
            }
        }
    }

    /// <summary>By sums over all ground south-west of each cell.</summary>
    private int BestSquare(double[] shares)
    {
        var (wide, deep) = (cells.Wide, cells.Deep);
        var sums = new double[(wide + 1) * (deep + 1)];
        for (var r = 0; r < deep; r++)
        {
            var row = 0.0;
            for (var c = 0; c < wide; c++)
            {
                row += shares[(r * wide) + c];
                sums[((r + 1) * (wide + 1)) + c + 1] = sums[(r * (wide + 1)) + c + 1] + row;
            }
        }

        var (best, most) = (0, double.NegativeInfinity);
        for (var r = 0; r < deep; r++)
        {
            var (low, high) = (Math.Max(0, r - reach) * (wide + 1), (Math.Min(deep - 1, r + reach) + 1) * (wide + 1));
            for (var c = 0; c < wide; c++)
            {
                var (first, last) = (Math.Max(0, c - reach), Math.Min(wide - 1, c + reach) + 1);
                var sum = sums[high + last] - sums[high + first] - sums[low + last] + sums[low + first];
                (best, most) = sum > most ? ((r * wide) + c, sum) : (best, most);
            }
        }

        return best;
    }
}
