namespace Underturf.Numerics;

/// <summary>
/// The graph of what is left, with each eliminated node kept as an element that lists the nodes it joined. A node's elements and nodes
/// share the room that its neighbours had at the start, elements from the front and nodes from the back: they never outgrow it.
/// </summary>
internal sealed class QuotientGraph
{
    private readonly int[] room;
    private readonly int[] first;
    private readonly int[] elementCount;
    private readonly int[] nodeCount;

    internal QuotientGraph(SparseGraph graph)
    {
        room = [.. graph.Neighbours];
        first = graph.Start;
        elementCount = new int[graph.Count];
        nodeCount = new int[graph.Count];
        Members = new int[graph.Count][];
        Weight = new int[graph.Count];
        Array.Fill(Weight, 1);
        for (var k = 0; k < graph.Count; k++)
        {
            nodeCount[k] = first[k + 1] - first[k];
        }
    }

    /// <summary>How many unknowns a node stands for; 0 once it is eliminated or stands with another.</summary>
    internal int[] Weight { get; }

    /// <summary>Nodes of each element; null for what is none, or is taken up by a later one.</summary>
    internal int[]?[] Members { get; }

    internal Span<int> Elements(int node) => room.AsSpan(first[node], elementCount[node]);

    internal Span<int> Nodes(int node) => room.AsSpan(first[node + 1] - nodeCount[node], nodeCount[node]);

    /// <summary>Makes an element of the node.</summary>
    /// <param name="inElement">Marks, by the stamp, the nodes of the new element.</param>
    /// <returns>Its nodes.</returns>
    internal int[] Eliminate(int node, int[] inElement, int stamp)
    {
        var found = new List<int>();
        inElement[node] = stamp;
        Collect(Nodes(node), found, inElement, stamp);
        foreach (var element in Elements(node))
        {
            Collect(Members[element], found, inElement, stamp);
            Members[element] = null;
        }

        Weight[node] = 0;
        return Members[node] = [.. found];
    }

    /// <summary>Drops elements that are taken up, and nodes that are gone or in the new element, which joins the elements.</summary>
    /// <param name="outside">Weight of each element outside the new one; an element that lies within is taken up.</param>
    /// <returns>Weight of what the node touches besides the new element, elements counted as if they did not overlap.</returns>
    internal int Update(int node, int element, int[] inElement, int stamp, int[] outside)
    {
        var (touched, kept) = (0, 0);
        foreach (var old in Elements(node))
        {
            if (Members[old] is not null && outside[old] == 0)
            {
                Members[old] = null;
            }

            if (Members[old] is not null)
            {
                touched += outside[old];
                room[first[node] + kept++] = old;
            }
        }

        touched += KeepNodes(node, inElement, stamp);
        room[first[node] + kept++] = element;
        elementCount[node] = kept;
        return touched;
    }

    /// <summary>Lets go of the nodes of an element that are gone.</summary>
    internal void Shrink(int element) => Members[element] = [.. Members[element]!.Where(n => Weight[n] > 0)];

    private int KeepNodes(int node, int[] inElement, int stamp)
    {
        var (touched, kept) = (0, 0);
        for (var at = first[node + 1] - 1; at >= first[node + 1] - nodeCount[node]; at--)
        {
            var other = room[at];
            if (Weight[other] > 0 && inElement[other] != stamp)
            {
                touched += Weight[other];
                room[first[node + 1] - 1 - kept++] = other;
            }
        }

        nodeCount[node] = kept;
        return touched;
    }

    private void Collect(ReadOnlySpan<int> nodes, List<int> found, int[] inElement, int stamp)
    {
        foreach (var node in nodes)
        {
            if (Weight[node] > 0 && inElement[node] != stamp)
            {
                inElement[node] = stamp;
                found.Add(node);
            }
        }
    }
}
