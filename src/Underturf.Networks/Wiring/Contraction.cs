namespace Underturf.Networks.Wiring;

/// <summary>
/// Nodes joined by perfect joints and ideal sources, each group made one node. Within a group each node stands a known voltage above the
/// group's root, so an ideal source needs no equation of its own.
/// </summary>
internal sealed class Contraction
{
    private readonly int[] parent;
    private readonly double[] above;
    private readonly int[] merged;

    /// <param name="joints">Element numbers of perfect joints and ideal sources.</param>
    internal Contraction(WiringNetwork network, IReadOnlyList<int> joints)
    {
        Joints = joints;
        parent = new int[network.NodeCount];
        above = new double[network.NodeCount];
        merged = new int[network.NodeCount];
        for (var k = 0; k < parent.Length; k++)
        {
            parent[k] = k;
        }

        foreach (var e in joints)
        {
            Join(e, network.Layout.A[e], network.Layout.B[e], network.Driving[e]);
        }

        Number();
    }

    /// <summary>Nodes left.</summary>
    internal int Count { get; private set; }

    internal IReadOnlyList<int> Joints { get; }

    /// <summary>A joint that closes a loop whose voltages do not add up to zero; -1 where there is none.</summary>
    internal int Contradiction { get; private set; } = -1;

    internal int Merged(int node) => merged[node];

    /// <summary>Volts of the node above its group.</summary>
    internal double Offset(int node) => above[node];

    private void Join(int element, int a, int b, double volts)
    {
        var rootA = Find(a);
        var rootB = Find(b);
        if (rootA != rootB)
        {
            parent[rootA] = rootB;
            above[rootA] = above[b] + volts - above[a];
        }
        else if (Math.Abs(above[a] - above[b] - volts) > 1e-9 * Math.Max(1, Math.Abs(volts)))
        {
            Contradiction = element;
        }
    }

    /// <summary>The root, with the path to it shortened so that afterwards <c>above[node]</c> is against the root.</summary>
    private int Find(int node)
    {
        if (parent[node] == node)
        {
            return node;
        }

        var up = parent[node];
        var root = Find(up);
        above[node] += above[up];
        parent[node] = root;
        return root;
    }

    private void Number()
    {
        for (var node = 0; node < parent.Length; node++)
        {
            merged[node] = Find(node) == node ? Count++ : -1;
        }

        for (var node = 0; node < parent.Length; node++)
        {
            merged[node] = merged[parent[node]];
        }
    }
}
