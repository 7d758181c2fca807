namespace Underturf.Numerics;

/// <summary>Plays the elimination through once without numbers: of the nodes left, the one with fewest neighbours, lowest number among equals.</summary>
internal sealed class PatternBuilder
{
    /// <summary>For each node the nodes left that it is joined to, with the slot of the pair.</summary>
    private readonly SortedList<int, int>[] neighbours;

    private readonly PriorityQueue<int, (int Degree, int Node)> queue = new();

    internal PatternBuilder(int nodeCount)
    {
        NodeCount = nodeCount;
        neighbours = new SortedList<int, int>[nodeCount];
        for (var k = 0; k < nodeCount; k++)
        {
            neighbours[k] = [];
        }
    }

    internal int NodeCount { get; }

    internal int SlotCount { get; private set; }

    internal List<int> Pivots { get; } = [];

    internal List<int> NeighbourStart { get; } = [0];

    internal List<int> NeighbourNode { get; } = [];

    internal List<int> NeighbourSlot { get; } = [];

    internal List<int> PairSlot { get; } = [];

    internal int Slot(int i, int j)
    {
        if (!neighbours[i].TryGetValue(j, out var slot))
        {
            slot = SlotCount++;
            neighbours[i].Add(j, slot);
            neighbours[j].Add(i, slot);
        }

        return slot;
    }

    internal void EliminateAllBut(ReadOnlySpan<bool> isReference)
    {
        var gone = new bool[NodeCount];
        for (var k = 0; k < NodeCount; k++)
        {
            gone[k] = isReference[k];
            Offer(k, gone);
        }

        while (queue.TryDequeue(out var pivot, out var seen))
        {
            // A node is offered again whenever its neighbours change; older offers are stale.
            if (!gone[pivot] && seen.Degree == neighbours[pivot].Count)
            {
                gone[pivot] = true;
                Eliminate(pivot, gone);
            }
        }
    }

    private void Offer(int node, bool[] gone)
    {
        if (!gone[node])
        {
            queue.Enqueue(node, (neighbours[node].Count, node));
        }
    }

    private void Eliminate(int pivot, bool[] gone)
    {
        var (around, slots) = (neighbours[pivot].Keys, neighbours[pivot].Values);
        if (around.Count == 0)
        {
            throw new InvalidOperationException($"Node {pivot} has no path to a reference.");
        }

        NeighbourNode.AddRange(around);
        NeighbourSlot.AddRange(slots);
        foreach (var node in around)
        {
            neighbours[node].Remove(pivot);
        }

        for (var p = 0; p < around.Count; p++)
        {
            for (var q = p + 1; q < around.Count; q++)
            {
                PairSlot.Add(Slot(around[p], around[q]));
            }
        }

        foreach (var node in around)
        {
            Offer(node, gone);
        }

        Pivots.Add(pivot);
        NeighbourStart.Add(NeighbourNode.Count);
    }
}
