namespace Underturf.Numerics;

/// <summary>
/// In which order the nodes of a network are eliminated, and where in a flat array each number lies. Depends on what is joined to what only,
/// so one pattern serves every set of values of the same network.
/// </summary>
/// <remarks>
/// Order: least neighbours first, lowest index among equals, which leaves trees without fill. A slot is one unordered pair of nodes.
/// </remarks>
public sealed class NodalPattern
{
    private readonly int[] edgeSlots;

    private NodalPattern(PatternBuilder built, int[] edgeSlots)
    {
        this.edgeSlots = edgeSlots;
        NodeCount = built.NodeCount;
        SlotCount = built.SlotCount;
        Pivots = [.. built.Pivots];
        NeighbourStart = [.. built.NeighbourStart];
        NeighbourNode = [.. built.NeighbourNode];
        NeighbourSlot = [.. built.NeighbourSlot];
        PairSlot = [.. built.PairSlot];
        References = [.. Enumerable.Range(0, built.NodeCount).Except(built.Pivots)];
    }

    public int NodeCount { get; }

    public int SlotCount { get; }

    /// <summary>Slot of each edge given to <see cref="For"/>; -1 for an edge from a node to itself.</summary>
    public ReadOnlySpan<int> EdgeSlots => edgeSlots;

    internal int[] Pivots { get; }

    internal int[] References { get; }

    /// <summary>Pivot p has the neighbours from NeighbourStart[p] up to NeighbourStart[p + 1].</summary>
    internal int[] NeighbourStart { get; }

    internal int[] NeighbourNode { get; }

    internal int[] NeighbourSlot { get; }

    /// <summary>Slots of the pairs of neighbours, (0,1), (0,2), ... (1,2), ..., one pivot after the other.</summary>
    internal int[] PairSlot { get; }

    /// <summary>The pattern of a network.</summary>
    /// <param name="nodeCount">Nodes are numbered from 0.</param>
    /// <param name="from">One end of each edge.</param>
    /// <param name="to">The other end.</param>
    /// <param name="isReference">Nodes held at zero. Every connected part needs one.</param>
    public static NodalPattern For(int nodeCount, ReadOnlySpan<int> from, ReadOnlySpan<int> to, ReadOnlySpan<bool> isReference)
    {
        var builder = new PatternBuilder(nodeCount);
        var slots = new int[from.Length];
        for (var e = 0; e < slots.Length; e++)
        {
            slots[e] = from[e] == to[e] ? -1 : builder.Slot(from[e], to[e]);
        }

        builder.EliminateAllBut(isReference);
        return new NodalPattern(builder, slots);
    }
}
