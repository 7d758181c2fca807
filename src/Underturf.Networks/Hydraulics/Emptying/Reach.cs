namespace Underturf.Networks.Hydraulics.Emptying;

/// <summary>Which nodes water can run from, and air come to, when a network is open at a node; by the heights on the way.</summary>
internal static class Reach
{
    /// <summary>
    /// For each node the least height that water from there has to climb on its way to the opening; infinity where it cannot come. Where that
    /// is higher than the node, air in the crest leaves water standing behind it.
    /// </summary>
    internal static double[] Crests(PipeNetwork network, int opening) =>
        Spread(network, [opening], (height, node) => Math.Max(height, network.Nodes[node].ElevationMetres), sign: 1, waterRuns: true);

    /// <summary>
    /// For each node the height down to which air can follow the water there, the least height on the best way from where it comes in; minus
    /// infinity where none comes.
    /// </summary>
    internal static double[] AirDownTo(PipeNetwork network, IReadOnlyList<int> entries)
    {
        var found = Spread(network, entries, (height, node) => -Math.Min(-height, network.Nodes[node].ElevationMetres), sign: -1, waterRuns: false);
        return [.. found.Select(h => -h)];
    }

    private static double[] Spread(PipeNetwork network, IReadOnlyList<int> from, Func<double, int, double> along, int sign, bool waterRuns)
    {
        var best = new double[network.Nodes.Count];
        Array.Fill(best, double.PositiveInfinity);
        var around = Around(network, waterRuns);
        var queue = new PriorityQueue<int, (double Height, int Node)>();
        foreach (var node in from)
        {
            best[node] = sign * network.Nodes[node].ElevationMetres;
            queue.Enqueue(node, (best[node], node));
        }

        while (queue.TryDequeue(out var node, out var seen))
        {
            foreach (var other in seen.Height > best[node] ? [] : around[node])
            {
                var height = along(best[node], other);
                if (height < best[other])
                {
                    best[other] = height;
                    queue.Enqueue(other, (height, other));
                }
            }
        }

        return best;
    }

    /// <summary>From where water comes to each node; for air both ways.</summary>
    private static List<int>[] Around(PipeNetwork network, bool waterRuns)
    {
        List<int>[] around = [.. network.Nodes.Select(_ => new List<int>())];
        foreach (var element in network.Flowing.Where(e => !e.IsClosed))
        {
            around[element.B].Add(element.A);
            if (!waterRuns || !element.IsOneWay)
            {
                around[element.A].Add(element.B);
            }
        }

        return around;
    }
}
