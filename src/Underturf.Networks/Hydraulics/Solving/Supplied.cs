namespace Underturf.Networks.Hydraulics;

/// <summary>Which nodes water can come to: from bodies of water through what is not shut, and through one-way elements in their direction.</summary>
public static class Supplied
{
    /// <returns>By the numbers of the nodes.</returns>
    /// <param name="everythingOpen">What is shut counts as open too.</param>
    public static bool[] Nodes(PipeNetwork network, bool everythingOpen = false)
    {
        var (start, around) = Meeting(network);
        var reached = new bool[network.Nodes.Count];
        var open = new Stack<int>();
        for (var node = 0; node < reached.Length; node++)
        {
            if (network.Nodes[node].IsReservoir)
            {
                reached[node] = true;
                open.Push(node);
            }
        }

        while (open.TryPop(out var node))
        {
            for (var at = start[node]; at < start[node + 1]; at++)
            {
                var element = network.Flowing[around[at]];
                var other = element.A == node ? element.B : element.A;
                if ((everythingOpen || !element.IsClosed) && !reached[other] && (element.A == node || !element.IsOneWay))
                {
                    reached[other] = true;
                    open.Push(other);
                }
            }
        }

        return reached;
    }

    /// <summary>Elements at each node, in one array.</summary>
    private static (int[] Start, int[] Around) Meeting(PipeNetwork network)
    {
        var start = new int[network.Nodes.Count + 1];
        foreach (var element in network.Flowing)
        {
            start[element.A]++;
            start[element.B]++;
        }

        for (var node = 1; node < start.Length; node++)
        {
            start[node] += start[node - 1];
        }

        var around = new int[2 * network.Flowing.Count];
        for (var e = network.Flowing.Count - 1; e >= 0; e--)
        {
            around[--start[network.Flowing[e].A]] = e;
            around[--start[network.Flowing[e].B]] = e;
        }

        return (start, around);
    }
}
