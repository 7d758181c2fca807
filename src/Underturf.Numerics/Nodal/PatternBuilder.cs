namespace Underturf.Numerics;

/// <summary>Plays the elimination through once without numbers.</summary>
internal sealed class PatternBuilder
{
    private readonly int[] slots;
    private readonly int[] degree;
    private readonly bool[] gone;

    internal PatternBuilder(int nodeCount)
    {
        NodeCount = nodeCount;
        slots = new int[nodeCount * nodeCount];
        Array.Fill(slots, -1);
        degree = new int[nodeCount];
        gone = new bool[nodeCount];
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
        var at = (i * NodeCount) + j;
        if (slots[at] < 0)
        {
            slots[at] = slots[(j * NodeCount) + i] = SlotCount++;
            degree[i]++;
            degree[j]++;
        }

        return slots[at];
    }

    internal void EliminateAllBut(ReadOnlySpan<bool> isReference)
    {
        for (var pivot = Next(isReference); pivot >= 0; pivot = Next(isReference))
        {
            Eliminate(pivot);
        }
    }

    private int Next(ReadOnlySpan<bool> isReference)
    {
        var best = -1;
        for (var k = 0; k < NodeCount; k++)
        {
            if (!gone[k] && !isReference[k] && (best < 0 || degree[k] < degree[best]))
            {
                best = k;
            }
        }

        return best;
    }

    private void Eliminate(int pivot)
    {
        var first = NeighbourNode.Count;
        for (var j = 0; j < NodeCount; j++)
        {
            if (slots[(pivot * NodeCount) + j] >= 0 && !gone[j])
            {
                NeighbourNode.Add(j);
                NeighbourSlot.Add(slots[(pivot * NodeCount) + j]);
                degree[j]--;
            }
        }

        if (NeighbourNode.Count == first)
        {
            throw new InvalidOperationException($"Node {pivot} has no path to a reference.");
        }

        for (var p = first; p < NeighbourNode.Count; p++)
        {
            for (var q = p + 1; q < NeighbourNode.Count; q++)
            {
                PairSlot.Add(Slot(NeighbourNode[p], NeighbourNode[q]));
            }
        }

        gone[pivot] = true;
        Pivots.Add(pivot);
        NeighbourStart.Add(NeighbourNode.Count);
    }
}
