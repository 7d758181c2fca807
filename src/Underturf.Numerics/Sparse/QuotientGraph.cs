using System.Runtime.InteropServices;

namespace Underturf.Numerics;

/// <summary>
/// The graph of what is left, with each eliminated node kept as an element that lists the nodes it joined. A node's elements and nodes
/// share the room that its neighbours had at the start, elements from the front and nodes from the back: they never outgrow it.
/// </summary>
internal sealed class QuotientGraph
{
    private const int None = -1;

    private readonly int[] room;
    private readonly int[] first;
    private readonly int[] elementCount;
    private readonly int[] nodeCount;
    private readonly List<int> members;
    private readonly int[] memberStart;
    private readonly int[] memberCount;

    internal QuotientGraph(SparseGraph graph)
    {
        room = [.. graph.Neighbours];
        first = graph.Start;
        elementCount = new int[graph.Count];
        nodeCount = new int[graph.Count];
        members = new List<int>(4 * graph.Count);
        (memberStart, memberCount) = (new int[graph.Count], new int[graph.Count]);
        Array.Fill(memberCount, None);
        Weight = new int[graph.Count];
        Array.Fill(Weight, 1);
        for (var k = 0; k < graph.Count; k++)
        {
            nodeCount[k] = first[k + 1] - first[k];
        }
    }

    /// <summary>How many unknowns a node stands for; 0 once it is eliminated or stands with another.</summary>
    internal int[] Weight { get; }

    /// <summary>Whether the node is an element that no later one has taken up.</summary>
    internal bool IsElement(int node) => memberCount[node] != None;

    internal ReadOnlySpan<int> Members(int element) => CollectionsMarshal.AsSpan(members).Slice(memberStart[element], memberCount[element]);

    internal Span<int> Elements(int node) => room.AsSpan(first[node], elementCount[node]);

    internal Span<int> Nodes(int node) => room.AsSpan(first[node + 1] - nodeCount[node], nodeCount[node]);

    /// <summary>Makes an element of the node.</summary>
    /// <param name="inElement">Marks, by the stamp, the nodes of the new element.</param>
    internal void Eliminate(int node, int[] inElement, int stamp)
    {
        memberStart[node] = members.Count;
        inElement[node] = stamp;
        foreach (var other in Nodes(node))
        {
            Collect(other, inElement, stamp);
        }

        foreach (var element in Elements(node))
        {
            for (var m = 0; m < memberCount[element]; m++)
            {
                Collect(members[memberStart[element] + m], inElement, stamp);
            }

            memberCount[element] = None;
        }

        Weight[node] = 0;
        memberCount[node] = members.Count - memberStart[node];
    }

    /// <summary>Drops elements that are taken up, and nodes that are gone or in the new element, which joins the elements.</summary>
    /// <param name="outside">Weight of each element outside the new one; an element that lies within is taken up.</param>
    /// <returns>Weight of what the node touches besides the new element, elements counted as if they did not overlap.</returns>
    internal int Update(int node, int element, int[] inElement, int stamp, int[] outside)
    {
        var (touched, kept) = (0, 0);
        foreach (var old in Elements(node))
        {
            if (IsElement(old) && outside[old] == 0)
            {
                memberCount[old] = None;
            }

            if (IsElement(old))
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
    internal void Shrink(int element)
    {
        var kept = memberStart[element];
        for (var m = kept; m < memberStart[element] + memberCount[element]; m++)
        {
            if (Weight[members[m]] > 0)
            {
                members[kept++] = members[m];
            }
        }

        memberCount[element] = kept - memberStart[element];
    }

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

    private void Collect(int node, int[] inElement, int stamp)
    {
        if (Weight[node] > 0 && inElement[node] != stamp)
        {
            inElement[node] = stamp;
            members.Add(node);
        }
    }
}
