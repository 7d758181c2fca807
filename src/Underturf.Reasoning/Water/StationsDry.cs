using Underturf.Networks.Hydraulics;
using Underturf.Property;

namespace Underturf.Reasoning.Water;

/// <summary>
/// Which stations have no water while something is shut. One that nobody has noted a pipe to is fed by something all the same: it goes dry for certain where
/// everything is shut, and may go dry wherever nothing tells that it does not.
/// </summary>
/// <param name="pipes">With everything open.</param>
internal sealed class StationsDry(WaterCase owner, PipeRecord pipes)
{
    private readonly bool[] before = Supplied.Nodes(pipes.Network);

    private PropertyView View => owner.View;

    /// <summary>Whether pipes that are noted lead to a node from a point of connection.</summary>
    public bool IsJoined(int node) => before[node];

    /// <param name="shut">Ids of isolation valves and points of connection.</param>
    /// <returns>Ids of those that go dry, of those that may, and whether that is every station.</returns>
    public (IReadOnlyList<string> Dry, IReadOnlyList<string> May, bool Every) Of(IReadOnlyCollection<string> shut)
    {
        if (owner.Supplies.All(shut.Contains))
        {
            return ([.. View.Stations.Keys], [], true);
        }

        var after = After(shut);
        var above = IsAbove(after);
        var known = View.Stations.Keys.ToLookup(s => View.ValvesOf(s).Select(v => v.Id).DefaultIfEmpty(s).Select(v => IsDry(s, v, shut, after) ?? (above ? true : null)).Max(d => d switch { true => 2, null => 1, _ => 0 }));
        return ([.. known[2]], [.. known[1]], above && known[2].Count() == View.Stations.Count);
    }

    /// <summary>Nodes that water comes to then.</summary>
    public bool[] After(IReadOnlyCollection<string> shut) =>
        Supplied.Nodes(shut.Select(pipes.ElementOf).OfType<int>().Aggregate(pipes.Network, (n, e) => n.WithClosed(e, isClosed: true)));

    /// <summary>By the pipes, or else by what somebody has said; nothing where neither tells.</summary>
    private bool? IsDry(string station, string valve, IReadOnlyCollection<string> shut, bool[] after)
    {
        if (pipes.NodeOf(valve) is { } node && before[node])
        {
            return !after[node];
        }

        string[] things = [station, valve];
        var told = View.IsolationValves.Keys.Where(i => owner.LiesBehind(i, things) == true).ToList();
        if (told.Exists(shut.Contains) || told.Exists(i => pipes.NodeOf(i) is { } at && before[at] && !after[at]))
        {
            return true;
        }

        var elsewhere = told.Exists(i => pipes.DownNodeOf(i) is { } at && after[at]) || shut.All(i => View.IsolationValves.ContainsKey(i) && owner.LiesBehind(i, things) == false);
        return elsewhere ? false : null;
    }

    /// <summary>Up to what is shut there is one way from each point of connection and nothing to branch off at, so that nothing has water beside it.</summary>
    private bool IsAbove(bool[] after)
    {
        if (View.WaterSupplies.Count == 0 || View.Fittings.Keys.Any(f => pipes.NodeOf(f) is { } node && after[node]))
        {
            return false;
        }

        var meets = new int[after.Length];
        foreach (var element in pipes.Network.Elements)
        {
            meets[element.A]++;
            meets[element.B]++;
        }

        return Enumerable.Range(0, after.Length).All(n => !after[n] || meets[n] == (pipes.Network.Nodes[n].IsReservoir ? 1 : 2));
    }
}
