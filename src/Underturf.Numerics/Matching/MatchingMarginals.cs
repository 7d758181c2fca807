namespace Underturf.Numerics;

/// <summary>How likely each row takes each column, and how likely none.</summary>
/// <param name="shares">For each row its columns and, last, none; a row's shares add up to one.</param>
public sealed class MatchingMarginals(int rows, int columns, double[] shares)
{
    private readonly Lazy<double>? logSum;

    public int Rows { get; } = rows;

    public int Columns { get; } = columns;

    /// <summary>False where a part was too large to be summed and was sampled.</summary>
    public bool IsExact { get; init; } = true;

    /// <summary>Logarithm of the sum over all matchings; where shares are not exact, an estimate that is good for comparing like bundles.</summary>
    public double LogSum
    {
        get => logSum?.Value ?? 0;
        init => logSum = new Lazy<double>(value);
    }

    /// <summary>The same, worked out only where it is asked for.</summary>
    private Func<double> LateLogSum
    {
        init => logSum = new Lazy<double>(value, isThreadSafe: false);
    }

    public double this[int row, int column] => shares[(row * (Columns + 1)) + column];

    public double Alone(int row) => shares[(row * (Columns + 1)) + Columns];

    /// <summary>The columns of a row and, last, none.</summary>
    public ReadOnlySpan<double> Of(int row) => shares.AsSpan(row * (Columns + 1), Columns + 1);

    /// <summary>A copy of all, row after row.</summary>
    public double[] ToArray() => [.. shares];

    /// <summary>
    /// Sums over all matchings where that can be done, part by part; samples the parts that are too large. What no sum keeps above one in a thousand million is left out.
    /// </summary>
    /// <exception cref="ArgumentException">A row can neither take a column nor stay alone.</exception>
    public static MatchingMarginals Of(MatchingWeights weights, ulong seed)
    {
        var shares = new double[weights.Rows * (weights.Columns + 1)];
        var (exact, log, unused) = (true, 0.0, Enumerable.Range(0, weights.Columns).ToHashSet());
        foreach (var (rows, columns) in MatchingParts.Of(weights))
        {
            var part = weights.Part(rows, columns);
            var summed = MatchingSum.Of(part);
            exact &= summed is not null;
            var (sums, logSum) = summed ?? Sampled(part, seed);
            log += logSum;
            unused.ExceptWith(columns);
            Spread(sums, rows, columns, shares, weights.Columns);
        }

        return new MatchingMarginals(weights.Rows, weights.Columns, shares) { IsExact = exact, LogSum = log + unused.Sum(j => Math.Log(weights.ColumnAlone(j))) };
    }

    /// <summary>By scaling rows and columns in turn: quick, flatter than the truth.</summary>
    /// <exception cref="ArgumentException">A row can neither take a column nor stay alone.</exception>
    public static MatchingMarginals Balanced(MatchingWeights weights, int rounds)
    {
        var shares = MatchingBalance.Of(weights, rounds);
        return new MatchingMarginals(weights.Rows, weights.Columns, shares) { IsExact = false, LateLogSum = () => MatchingFreeEnergy.LogSum(weights, shares) };
    }

    private static (double[] Shares, double LogSum) Sampled(MatchingWeights part, ulong seed)
    {
        var drawn = MatchingSample.Of(part, new SeededGenerator(seed));
        return (drawn, MatchingFreeEnergy.LogSum(part, drawn));
    }

    private static void Spread(double[] sums, IReadOnlyList<int> rows, IReadOnlyList<int> columns, double[] shares, int wide)
    {
        for (var i = 0; i < rows.Count; i++)
        {
            var from = i * (columns.Count + 1);
            for (var j = 0; j < columns.Count; j++)
            {
                shares[(rows[i] * (wide + 1)) + columns[j]] = sums[from + j];
            }

            shares[(rows[i] * (wide + 1)) + wide] = sums[from + columns.Count];
        }
    }
}
