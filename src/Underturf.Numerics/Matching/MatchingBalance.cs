namespace Underturf.Numerics;

/// <summary>
/// Rows and columns of a matching scaled in turn until each adds up to one (Sinkhorn and Knopp, Pacific Journal of Mathematics 21, 1967; from memory). Scaling changes no
/// chance of a matching; the shares it ends with are those of the matching but for how rows hang together, flatter than they.
/// </summary>
public static class MatchingBalance
{
    /// <returns>For each row its columns and, last, none.</returns>
    /// <exception cref="ArgumentException">A row can neither take a column nor stay alone.</exception>
    public static double[] Of(MatchingWeights weights, int rounds)
    {
        var (row, scale, turned) = (new double[weights.Rows], new double[weights.Columns], weights.Turned());
        Array.Fill(scale, 1);
        for (var round = 0; round <= rounds; round++)
        {
            Scale(turned, scale, row);
            if (Array.FindIndex(row, sum => !(sum > 0)) is var empty and >= 0)
            {
                throw new ArgumentException($"Row {empty} can neither take a column nor stay alone.", nameof(weights));
            }

            if (round < rounds)
            {
                Scale(weights, row, scale);
            }
        }

        return Shares(weights, row, scale);
    }

    /// <summary>For each column one over its weights times what their rows are scaled by; zero for a column of nothing. Row after row: sums that do not wait for each other.</summary>
    private static void Scale(MatchingWeights weights, double[] by, double[] sums)
    {
        for (var j = 0; j < sums.Length; j++)
        {
            sums[j] = weights.ColumnAlone(j);
        }

        for (var i = 0; i < by.Length; i++)
        {
            var factor = by[i];
            var mine = weights.Row(i)[..sums.Length];
            for (var j = 0; j < mine.Length; j++)
            {
                sums[j] += mine[j] * factor;
            }
        }

        for (var j = 0; j < sums.Length; j++)
        {
            sums[j] = sums[j] > 0 ? 1 / sums[j] : 0;
        }
    }

    private static double[] Shares(MatchingWeights weights, double[] row, double[] scale)
    {
        var wide = weights.Columns + 1;
        var shares = new double[weights.Rows * wide];
        for (var i = 0; i < weights.Rows; i++)
        {
            for (var j = 0; j < weights.Columns; j++)
            {
                shares[(i * wide) + j] = weights[i, j] * row[i] * scale[j];
            }

            shares[(i * wide) + weights.Columns] = weights.RowAlone(i) * row[i];
        }

        return shares;
    }
}
