namespace Underturf.Networks.Wiring;

/// <summary>
/// Elements whose opening parts the network in two: all current from one side to the other flows through them. Bridges of a graph by one depth-first search (Tarjan 1974; from
/// memory); a node's number in the search, against the range below the bridge, says on which side it lies.
/// </summary>
internal sealed class Bridges
{
    private readonly int[] order;
    private readonly int[] last;

    /// <summary>By element: the merged node below it; -1 where it is no bridge.</summary>
    private readonly int[] below;

    internal Bridges(WiringNetwork network, Topology topology)
    {
        var count = topology.Contraction.Count;
        (order, last, below) = (new int[count], new int[count], new int[network.ElementCount]);
        Array.Fill(order, -1);
        Array.Fill(below, -1);
        Search(Neighbours(network, topology, count));
    }

    internal bool IsBridge(int element) => below[element] >= 0;

    /// <summary>Amperes through the bridge for each that enters at a and leaves at b, counted from below it: 1, -1, or 0 where both are on one side.</summary>
    internal int Crossing(int element, int a, int b) => (IsBelow(a, below[element]) ? 1 : 0) - (IsBelow(b, below[element]) ? 1 : 0);

    private bool IsBelow(int node, int top) => order[node] >= order[top] && order[node] <= last[top];

    private static List<(int Node, int Element)>[] Neighbours(WiringNetwork network, Topology topology, int count)
    {
        var neighbours = new List<(int Node, int Element)>[count];
        for (var k = 0; k < count; k++)
        {
            neighbours[k] = [];
        }

        for (var e = 0; e < network.ElementCount; e++)
        {
            if (topology.ElementSlot[e] >= 0)
            {
                var (a, b) = (topology.Contraction.Merged(network.Layout.A[e]), topology.Contraction.Merged(network.Layout.B[e]));
                neighbours[a].Add((b, e));
                neighbours[b].Add((a, e));
            }
        }

        return neighbours;
    }

    /// <summary>Without recursion: a run of many boxes is a deep tree.</summary>
    private void Search(List<(int Node, int Element)>[] neighbours)
    {
        var (low, next, clock) = (new int[order.Length], new int[order.Length], 0);
        var path = new Stack<(int Node, int By)>();
        for (var root = 0; root < order.Length; root++)
        {
            if (order[root] < 0)
            {
                Enter(root, -1);
            }

            while (path.TryPeek(out var at))
            {
                if (next[at.Node] < neighbours[at.Node].Count)
                {
                    var (node, by) = neighbours[at.Node][next[at.Node]++];
                    Go(at, node, by);
                }
                else
                {
                    Leave(path.Pop());
                }
            }
        }

        void Enter(int node, int by)
        {
            order[node] = low[node] = clock++;
            path.Push((node, by));
        }

        void Go((int Node, int By) at, int node, int by)
        {
            if (order[node] < 0)
            {
                Enter(node, by);
            }
            else if (by != at.By)
            {
                low[at.Node] = Math.Min(low[at.Node], order[node]);
            }
        }

        void Leave((int Node, int By) done)
        {
            last[done.Node] = clock - 1;
            if (path.TryPeek(out var up))
            {
                low[up.Node] = Math.Min(low[up.Node], low[done.Node]);
                below[done.By] = low[done.Node] == order[done.Node] ? done.Node : -1;
            }
        }
    }
}
