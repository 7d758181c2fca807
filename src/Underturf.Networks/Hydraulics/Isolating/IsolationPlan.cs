using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics.Isolating;

/// <summary>Which valves to shut so that no supply comes to a place, at the least cost.</summary>
/// <param name="Places">The nodes that are to be without supply, all of them together.</param>
/// <param name="Shut">Elements to shut, in the order of the network.</param>
/// <param name="Minutes">What shutting them costs.</param>
/// <param name="Dry">Nodes that have supply now and have none then.</param>
public sealed record IsolationPlan(IReadOnlyList<int> Places, IReadOnlyList<int> Shut, double Minutes, IReadOnlyList<int> Dry)
{
    /// <param name="minutesByElement">
    /// What can be shut and what it costs: the way there and the turning, and for one that may not hold its chance of that times what it then costs.
    /// What is shut already costs nothing and counts as shut. A check valve counts as open: an old one is no proof.
    /// </param>
    /// <returns>The plan, or where a valve is needed.</returns>
    public static Outcome<IsolationPlan> Of(PipeNetwork network, int place, IReadOnlyDictionary<int, double> minutesByElement) => Of(network, [place], minutesByElement);

    /// <summary>The same for several nodes that are opened together.</summary>
    public static Outcome<IsolationPlan> Of(PipeNetwork network, IReadOnlyList<int> places, IReadOnlyDictionary<int, double> minutesByElement)
    {
        if (places.Where(p => network.Nodes[p].IsReservoir).Select(p => (int?)p).FirstOrDefault() is { } supply)
        {
            return new Problem($"supply '{network.Nodes[supply].Name}'", "cannot be shut off from itself", "Name a place behind it");
        }

        // Dearer than all valves together: a pipe is parted only where no set of valves does it.
        var dear = 1 + minutesByElement.Values.Sum();
        var shut = Cut(network, places, e => minutesByElement.TryGetValue(e, out var minutes) ? minutes : dear);
        var pipes = shut.Where(e => !minutesByElement.ContainsKey(e)).ToList();
        return pipes.Count > 0
            ? Missing(network, places[0], pipes)
            : new IsolationPlan(places, shut, shut.Sum(e => minutesByElement[e]), Dried(network, shut));
    }

    /// <summary>The next best where one of the valves turns out not to hold.</summary>
    public Outcome<IsolationPlan> Without(PipeNetwork network, int element, IReadOnlyDictionary<int, double> minutesByElement) =>
        Of(network.WithClosed(element, isClosed: false), Places, minutesByElement.Where(m => m.Key != element).ToDictionary(m => m.Key, m => m.Value));

    private static List<int> Cut(PipeNetwork network, IReadOnlyList<int> places, Func<int, double> cost)
    {
        var (supply, all) = (network.Nodes.Count, places.ToHashSet());
        int Side(int node) => network.Nodes[node].IsReservoir ? supply : all.Contains(node) ? places[0] : node;
        var cut = new MinimumCut(network.Nodes.Count + 1);
        for (var e = 0; e < network.Flowing.Count; e++)
        {
            if (!network.Flowing[e].IsClosed && Side(network.Flowing[e].A) != Side(network.Flowing[e].B))
            {
                cut.Join(Side(network.Flowing[e].A), Side(network.Flowing[e].B), cost(e));
            }
        }

        cut.Part(places[0], supply);
        bool Apart(PipeElement e) => !e.IsClosed && cut.IsOnFirstSide(Side(e.A)) != cut.IsOnFirstSide(Side(e.B));
        return [.. Enumerable.Range(0, network.Flowing.Count).Where(e => Apart(network.Flowing[e]))];
    }

    private static Problem Missing(PipeNetwork network, int place, List<int> pipes)
    {
        var names = string.Join(", ", pipes.Select(e => $"'{network.Flowing[e].Name}'"));
        return new Problem($"junction '{network.Nodes[place].Name}'", "cannot be isolated by the valves that are known", $"A valve is needed on {names}, or find one there");
    }

    private static List<int> Dried(PipeNetwork network, List<int> shut)
    {
        var (before, after) = (Supplied.Nodes(network), Supplied.Nodes(shut.Aggregate(network, (n, e) => n.WithClosed(e, isClosed: true))));
        return [.. Enumerable.Range(0, before.Length).Where(n => before[n] && !after[n])];
    }
}
