namespace Underturf.Numerics;

/// <summary>
/// The logarithm of the sum over all matchings, estimated from shares (Bethe's approximation as in statistical physics; Yedidia, Freeman and Weiss, IEEE Transactions on
/// Information Theory 51, 2005; from memory): each pair by itself, less what is counted twice. Differences between like bundles are better than the figure itself.
/// </summary>
internal static class MatchingFreeEnergy
{
    /// <summary>So small a share changes no digit that counts.</summary>
    private const double Nothing = 1e-13;

    private const double Small = 1e-4;

    /// <param name="shares">For each row its columns and, last, none.</param>
    public static double LogSum(MatchingWeights weights, double[] shares)
    {
        var (sum, wide) = (0.0, weights.Columns + 1);
        var free = new double[weights.Columns];
        Array.Fill(free, 1);
        for (var i = 0; i < weights.Rows; i++)
        {
            for (var j = 0; j < weights.Columns; j++)
            {
                var share = Math.Min(1, shares[(i * wide) + j]);
                sum += share > Nothing ? Part(share, weights[i, j]) + OfRest(share) : 0;
                free[j] -= share;
            }

            sum += Part(shares[(i * wide) + weights.Columns], weights.RowAlone(i));
        }

        for (var j = 0; j < weights.Columns; j++)
        {
            sum += Part(Math.Max(0, free[j]), weights.ColumnAlone(j));
        }

        return sum;
    }

    private static double Part(double share, double weight) => share > 0 && weight > 0 ? share * Math.Log(weight / share) : 0;

    /// <summary>(1 - p) ln(1 - p); of a small p by its series, whose next term is below the last digit.</summary>
    private static double OfRest(double p) => p < Small ? p * (-1 + (p * (0.5 + (p / 6)))) : p < 1 ? (1 - p) * Math.Log(1 - p) : 0;
}
