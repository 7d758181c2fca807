namespace Underturf.Numerics;

/// <summary>
/// The least costly set of joints that parts two nodes: as much as the most that could flow between them (Ford and Fulkerson, Canadian Journal of
/// Mathematics 8, 1956), which is found along shortest ways (Dinic, Soviet Mathematics Doklady 11, 1970; both from memory).
/// </summary>
public sealed class MinimumCut(int nodeCount)
{
    private readonly List<int>[] around = [.. Enumerable.Range(0, nodeCount).Select(_ => new List<int>())];
    private readonly List<int> to = [];
    private readonly List<double> left = [];
    private readonly int[] level = new int[nodeCount];
    private readonly int[] next = new int[nodeCount];

    /// <summary>Joins two nodes, both ways.</summary>
    /// <param name="cost">What parting them here costs, zero or more.</param>
    public void Join(int a, int b, double cost)
    {
        around[a].Add(to.Count);
        to.Add(b);
        left.Add(cost);
        around[b].Add(to.Count);
        to.Add(a);
        left.Add(cost);
    }

    /// <summary>Parts two nodes; once for each graph.</summary>
    /// <returns>What it costs.</returns>
    public double Part(int from, int apart)
    {
        var cost = 0.0;
        while (Levels(from, apart))
        {
            Array.Clear(next);
            for (var more = Push(from, apart, double.PositiveInfinity); more > 0; more = Push(from, apart, double.PositiveInfinity))
            {
                cost += more;
            }
        }

        return cost;
    }

    /// <summary>Whether the node is still joined to the first of the two that were parted.</summary>
    public bool IsOnFirstSide(int node) => level[node] >= 0;

    /// <summary>How far each node is from the first through joints with something left.</summary>
    private bool Levels(int from, int apart)
    {
        Array.Fill(level, -1);
        level[from] = 0;
        var queue = new Queue<int>([from]);
        while (queue.TryDequeue(out var node))
        {
            foreach (var joint in around[node])
            {
                if (left[joint] > 0 && level[to[joint]] < 0)
                {
                    level[to[joint]] = level[node] + 1;
                    queue.Enqueue(to[joint]);
                }
            }
        }

        return level[apart] >= 0;
    }

    private double Push(int node, int apart, double most)
    {
        if (node == apart)
        {
            return most;
        }

        for (; next[node] < around[node].Count; next[node]++)
        {
            var joint = around[node][next[node]];
            if (left[joint] > 0 && level[to[joint]] == level[node] + 1)
            {
                var pushed = Push(to[joint], apart, Math.Min(most, left[joint]));
                if (pushed > 0)
                {
                    left[joint] -= pushed;
                    left[joint ^ 1] += pushed;
                    return pushed;
                }
            }
        }

        return 0;
    }
}
