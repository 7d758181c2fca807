namespace Underturf.Numerics;

/// <summary>
/// The sum over all matchings of a part: over its columns one after the other, with how many rows of each kind are taken (a permanent by dynamic programming over
/// subsets; rows with the same weights are of one kind and need only be counted).
/// </summary>
internal sealed class MatchingSum
{
    /// <summary>States times columns times kinds: about a hundredth of a second.</summary>
    private const double MostWork = 4e6;

    private readonly MatchingWeights part;
    private readonly RowKinds kinds;

    private readonly double logScale;

    private MatchingSum(MatchingWeights part, RowKinds kinds)
    {
        this.kinds = kinds;
        (this.part, logScale) = Scaled(part);
    }

    /// <returns>For each row its columns and, last, none, and the logarithm of the sum; nothing where there are too many states.</returns>
    public static (double[] Shares, double LogSum)? Of(MatchingWeights part)
    {
        var (kinds, turned) = (RowKinds.Of(part), part.Turned());
        var kindsTurned = RowKinds.Of(turned);
        var (direct, across) = (kinds.States * kinds.Count * part.Columns, kindsTurned.States * kindsTurned.Count * part.Rows);
        return Math.Min(direct, across) > MostWork ? null
            : direct <= across ? new MatchingSum(part, kinds).Shares()
            : new MatchingSum(turned, kindsTurned).Shares() is var (back, log) ? (Back(back, part.Rows, part.Columns), log) : null;
    }

    /// <summary>From the shares of columns to those of rows.</summary>
    private static double[] Back(double[] turned, int n, int m)
    {
        var shares = new double[n * (m + 1)];
        for (var i = 0; i < n; i++)
        {
            var taken = 0.0;
            for (var j = 0; j < m; j++)
            {
                shares[(i * (m + 1)) + j] = turned[(j * (n + 1)) + i];
                taken += turned[(j * (n + 1)) + i];
            }

            shares[(i * (m + 1)) + m] = Math.Max(0, 1 - taken);
        }

        return shares;
    }

    private (double[] Shares, double LogSum) Shares()
    {
        var before = Forward();
        var ofKind = new double[kinds.Count * part.Columns];
        var after = Alone();
        for (var j = part.Columns - 1; j >= 0; j--)
        {
            after = Backward(j, before[j], after, ofKind);
        }

        var (n, m) = (part.Rows, part.Columns);
        var shares = new double[n * (m + 1)];
        for (var i = 0; i < n; i++)
        {
            var (kind, taken) = (kinds.KindOf[i], 0.0);
            for (var j = 0; j < m; j++)
            {
                taken += shares[(i * (m + 1)) + j] = ofKind[(kind * m) + j] / after[0] / kinds.Sizes[kind];
            }

            shares[(i * (m + 1)) + m] = Math.Max(0, 1 - taken);
        }

        return (shares, Math.Log(after[0]) + logScale);
    }

    /// <summary>For each column the states before it.</summary>
    private double[][] Forward()
    {
        var before = new double[part.Columns][];
        var now = new double[(int)kinds.States];
        now[0] = 1;
        for (var j = 0; j < part.Columns; j++)
        {
            before[j] = now;
            var next = new double[now.Length];
            for (var state = 0; state < now.Length; state++)
            {
                if (now[state] == 0)
                {
                    continue;
                }

                next[state] += now[state] * part.ColumnAlone(j);
                for (var kind = 0; kind < kinds.Count; kind++)
                {
                    if (kinds.Free(state, kind) is var free and > 0)
                    {
                        next[state + kinds.Step(kind)] += now[state] * part[kinds.First[kind], j] * free;
                    }
                }
            }

            now = next;
        }

        return before;
    }

    /// <summary>After the last column every row that is not taken stays alone.</summary>
    private double[] Alone()
    {
        var alone = new double[(int)kinds.States];
        for (var state = 0; state < alone.Length; state++)
        {
            alone[state] = 1;
            for (var kind = 0; kind < kinds.Count; kind++)
            {
                alone[state] *= Math.Pow(part.RowAlone(kinds.First[kind]), kinds.Free(state, kind));
            }
        }

        return alone;
    }

    /// <summary>From the states after a column to those before it; adds what each kind takes of it.</summary>
    private double[] Backward(int j, double[] before, double[] after, double[] ofKind)
    {
        var here = new double[after.Length];
        for (var state = 0; state < after.Length; state++)
        {
            here[state] = after[state] * part.ColumnAlone(j);
            for (var kind = 0; kind < kinds.Count; kind++)
            {
                if (kinds.Free(state, kind) is var free and > 0)
                {
                    var taken = part[kinds.First[kind], j] * free * after[state + kinds.Step(kind)];
                    here[state] += taken;
                    ofKind[(kind * part.Columns) + j] += before[state] * taken;
                }
            }
        }

        return here;
    }

    /// <summary>Each column by its largest weight, so that products stay in range; and the logarithm of all of these.</summary>
    private static (MatchingWeights Scaled, double Log) Scaled(MatchingWeights part)
    {
        var log = 0.0;
        var scaled = part.Part([.. Enumerable.Range(0, part.Rows)], [.. Enumerable.Range(0, part.Columns)]);
        for (var j = 0; j < part.Columns; j++)
        {
            var most = scaled.ColumnAlone(j);
            for (var i = 0; i < part.Rows; i++)
            {
                most = Math.Max(most, scaled[i, j]);
            }

            log += Math.Log(most);
            scaled.ColumnAlone(j) /= most;
            for (var i = 0; i < part.Rows; i++)
            {
                scaled[i, j] /= most;
            }
        }

        return (scaled, log);
    }
}
