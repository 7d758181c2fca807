namespace Underturf.Numerics;

/// <summary>Cuts a matching into parts that have nothing to do with each other.</summary>
internal static class MatchingParts
{
    /// <summary>A pair whose share is below this after balancing is taken as out of the question.</summary>
    private const double Nothing = 1e-9;

    private const int Rounds = 60;

    /// <returns>Every row once; columns that no row can take are in no part.</returns>
    public static IReadOnlyList<(IReadOnlyList<int> Rows, IReadOnlyList<int> Columns)> Of(MatchingWeights weights)
    {
        var shares = MatchingBalance.Of(weights, Rounds);
        Force(weights, shares);
        var parts = new List<(IReadOnlyList<int>, IReadOnlyList<int>)>();
        var seen = new bool[weights.Rows];
        for (var first = 0; first < weights.Rows; first++)
        {
            if (!seen[first])
            {
                parts.Add(From(first, weights, shares, seen));
            }
        }

        return parts;
    }

    private static (IReadOnlyList<int> Rows, IReadOnlyList<int> Columns) From(int first, MatchingWeights weights, double[] shares, bool[] seen)
    {
        var (rows, columns) = (new List<int> { first }, new SortedSet<int>());
        seen[first] = true;
        for (var at = 0; at < rows.Count; at++)
        {
            for (var j = 0; j < weights.Columns; j++)
            {
                if (shares[(rows[at] * (weights.Columns + 1)) + j] <= Nothing || !columns.Add(j))
                {
                    continue;
                }

                for (var i = 0; i < weights.Rows; i++)
                {
                    if (!seen[i] && shares[(i * (weights.Columns + 1)) + j] > Nothing)
                    {
                        seen[i] = true;
                        rows.Add(i);
                    }
                }
            }
        }

        rows.Sort();
        return (rows, [.. columns]);
    }

    /// <summary>A row that can take one column only takes it away from all others.</summary>
    private static void Force(MatchingWeights weights, double[] shares)
    {
        var wide = weights.Columns + 1;
        var forced = new bool[weights.Rows];
        for (var i = 0; i < weights.Rows; i++)
        {
            var open = weights.RowAlone(i) > 0 ? [] : Enumerable.Range(0, weights.Columns).Where(j => shares[(i * wide) + j] > 0).Take(2).ToList();
            if (forced[i] || open is not [var only])
            {
                continue;
            }

            forced[i] = true;
            for (var other = 0; other < weights.Rows; other++)
            {
                shares[(other * wide) + only] = other == i ? 1 : 0;
            }

            i = -1;
        }
    }
}
