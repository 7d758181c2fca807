namespace Underturf.Numerics;

/// <summary>Which unknowns meet in an equation: the neighbours of each node in one flat array, none twice and none its own.</summary>
internal sealed class SparseGraph
{
    private SparseGraph(int[] start, int[] neighbours)
    {
        Start = start;
        Neighbours = neighbours;
    }

    internal int Count => Start.Length - 1;

    /// <summary>Node k has the neighbours from Start[k] up to Start[k + 1].</summary>
    internal int[] Start { get; }

    internal int[] Neighbours { get; }

    internal static SparseGraph Of(int count, ReadOnlySpan<int> from, ReadOnlySpan<int> to)
    {
        var ends = new int[count + 1];
        for (var e = 0; e < from.Length; e++)
        {
            if (from[e] != to[e])
            {
                ends[from[e]]++;
                ends[to[e]]++;
            }
        }

        var all = new int[Accumulate(ends)];
        for (var e = 0; e < from.Length; e++)
        {
            if (from[e] != to[e])
            {
                all[--ends[from[e]]] = to[e];
                all[--ends[to[e]]] = from[e];
            }
        }

        ends[count] = all.Length;
        return Once(ends, all);
    }

    /// <summary>The same graph with node k named place[k].</summary>
    internal SparseGraph Renumbered(int[] order, int[] place)
    {
        var (start, neighbours) = (new int[Start.Length], new int[Neighbours.Length]);
        var at = 0;
        for (var k = 0; k < order.Length; k++)
        {
            for (var n = Start[order[k]]; n < Start[order[k] + 1]; n++)
            {
                neighbours[at++] = place[Neighbours[n]];
            }

            start[k + 1] = at;
        }

        return new SparseGraph(start, neighbours);
    }

    /// <summary>Counts become the ends of their ranges; the last stays what it was, and the sum is returned.</summary>
    private static int Accumulate(int[] counts)
    {
        var sum = 0;
        for (var k = 0; k < counts.Length - 1; k++)
        {
            sum += counts[k];
            counts[k] = sum;
        }

        return sum;
    }

    private static SparseGraph Once(int[] start, int[] all)
    {
        var seen = new int[start.Length - 1];
        Array.Fill(seen, -1);
        var kept = 0;
        var first = 0;
        for (var k = 0; k < seen.Length; k++)
        {
            var end = start[k + 1];
            for (var n = first; n < end; n++)
            {
                if (seen[all[n]] != k)
                {
                    seen[all[n]] = k;
                    all[kept++] = all[n];
                }
            }

            first = end;
            start[k + 1] = kept;
        }

        return new SparseGraph(start, all[..kept]);
    }
}
