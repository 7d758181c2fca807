namespace Underturf.Networks.Wiring;

/// <summary>Connected parts of a graph by union-find.</summary>
internal static class Parts
{
    /// <summary>For each node the number of its part; the number is that of one of its nodes.</summary>
    internal static int[] Of(int nodeCount, IReadOnlyList<int> from, IReadOnlyList<int> to)
    {
        var parent = new int[nodeCount];
        for (var k = 0; k < nodeCount; k++)
        {
            parent[k] = k;
        }

        for (var e = 0; e < from.Count; e++)
        {
            parent[Root(parent, from[e])] = Root(parent, to[e]);
        }

        for (var k = 0; k < nodeCount; k++)
        {
            parent[k] = Root(parent, k);
        }

        return parent;
    }

    private static int Root(int[] parent, int node)
    {
        while (parent[node] != node)
        {
            parent[node] = parent[parent[node]];
            node = parent[node];
        }

        return node;
    }
}
