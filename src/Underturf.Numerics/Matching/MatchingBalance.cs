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
        var (n, m) = (weights.Rows, weights.Columns);
        var (row, scale) = (new double[n], new double[m]);
        Array.Fill(scale, 1);
        for (var round = 0; round <= rounds; round++)
        {
            for (var i = 0; i < n; i++)
            {
                var sum = weights.RowAlone(i);
                for (var j = 0; j < m; j++)
                {
                    sum += weights[i, j] * scale[j];
                }

                row[i] = sum > 0 ? 1 / sum : throw new ArgumentException($"Row {i} can neither take a column nor stay alone.", nameof(weights));
            }

            for (var j = 0; j < m && round < rounds; j++)
            {
                var sum = weights.ColumnAlone(j);
                for (var i = 0; i < n; i++)
                {
                    sum += weights[i, j] * row[i];
                }

                scale[j] = sum > 0 ? 1 / sum : 0;
            }
        }

        return Shares(weights, row, scale);
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
