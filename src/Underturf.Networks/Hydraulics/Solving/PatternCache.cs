using Underturf.Numerics;

namespace Underturf.Networks.Hydraulics;

/// <summary>What all variants of a network share, made on first use.</summary>
internal sealed class PatternCache
{
    private PipePattern? pattern;

    internal PipePattern Of(PipeNetwork network) => pattern ??= new PipePattern(network);
}

/// <summary>Which node is which unknown, which elements meet there, and the order of elimination.</summary>
internal sealed class PipePattern
{
    internal PipePattern(PipeNetwork network)
    {
        Unknown = new int[network.Nodes.Count];
        for (var node = 0; node < Unknown.Length; node++)
        {
            Unknown[node] = network.Nodes[node].IsReservoir ? -1 : UnknownCount++;
        }

        var elements = network.Flowing;
        NodeA = [.. elements.Select(e => e.A)];
        NodeB = [.. elements.Select(e => e.B)];
        A = Array.ConvertAll(NodeA, node => Unknown[node]);
        B = Array.ConvertAll(NodeB, node => Unknown[node]);

        PairOf = Pairs(out var from, out var to);
        Sparse = SparsePattern.For(UnknownCount, from, to);
    }

    /// <summary>The unknown of each node; -1 for what holds its head.</summary>
    internal int[] Unknown { get; }

    internal int UnknownCount { get; }

    /// <summary>The node at each element's first end, and at its second.</summary>
    internal int[] NodeA { get; }

    internal int[] NodeB { get; }

    /// <summary>The unknown at each element's first end, and at its second.</summary>
    internal int[] A { get; }

    internal int[] B { get; }

    /// <summary>Number of each element among the pairs of unknowns; -1 where an end holds its head.</summary>
    internal int[] PairOf { get; }

    internal SparsePattern Sparse { get; }

    private int[] Pairs(out int[] from, out int[] to)
    {
        var pairs = new int[A.Length];
        var (firsts, seconds) = (new List<int>(A.Length), new List<int>(A.Length));
        for (var e = 0; e < pairs.Length; e++)
        {
            pairs[e] = A[e] < 0 || B[e] < 0 ? -1 : firsts.Count;
            if (pairs[e] >= 0)
            {
                firsts.Add(A[e]);
                seconds.Add(B[e]);
            }
        }

        (from, to) = ([.. firsts], [.. seconds]);
        return pairs;
    }
}
