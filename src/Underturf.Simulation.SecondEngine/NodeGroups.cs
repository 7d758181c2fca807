using Underturf.Networks.Wiring;

namespace Underturf.Simulation.SecondEngine;

/// <summary>Nodes joined into groups, one element after the other.</summary>
internal sealed class NodeGroups(int nodes)
{
    private readonly int[] parent = [.. Enumerable.Range(0, nodes)];

    /// <returns>False where the two were in one group already: the element closes a loop.</returns>
    internal bool Join(int a, int b)
    {
        var (p, q) = (Root(a), Root(b));
        parent[p] = q;
        return p != q;
    }

    internal int Root(int node)
    {
        while (parent[node] != node)
        {
            parent[node] = parent[parent[node]];
            node = parent[node];
        }

        return node;
    }

    /// <summary>Perfect joints that close a loop of perfect joints: without them every node stands where it stood.</summary>
    internal static HashSet<int> NeedlessJoints(WiringNetwork network)
    {
        var groups = new NodeGroups(network.NodeCount);
        return [.. Enumerable.Range(0, network.ElementCount).Where(e =>
        {
            var element = network.ElementAt(e);
            return element is { Ohms: 0, Henries: 0, Kind: not ElementKind.Source } && !groups.Join(element.A, element.B);
        })];
    }

    /// <summary>One node of each part that no element joins to the ground.</summary>
    internal static IEnumerable<int> Floating(WiringNetwork network, int ground, bool live)
    {
        var groups = new NodeGroups(network.NodeCount);
        for (var e = 0; e < network.ElementCount; e++)
        {
            var element = network.ElementAt(e);
            if (!double.IsPositiveInfinity(element.Ohms) && (live || element.Kind != ElementKind.Source))
            {
                groups.Join(element.A, element.B);
            }
        }

        return Enumerable.Range(0, network.NodeCount).Where(n => groups.Root(n) == n && n != groups.Root(ground));
    }
}
