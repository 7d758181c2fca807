using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Reasoning.Water;

/// <summary>Which stations have no water as things stand: their own valve is shut by hand, or something between it and the point of connection.</summary>
internal sealed class ShutOff(WaterCase owner)
{
    private readonly HashSet<string> shut = owner.ShutAt(Moment.Last);
    private readonly string? street = owner.OffAtSupply().Order(StringComparer.Ordinal).FirstOrDefault();

    private PropertyView View => owner.View;

    /// <summary>By station, what stands shut.</summary>
    public IReadOnlyDictionary<string, string> Find()
    {
        var dry = new SortedDictionary<string, string>(StringComparer.Ordinal);
        var reached = owner.Graph.Reached(shut.Contains);
        foreach (var station in shut.Count > 0 || street is not null ? View.Stations.Keys : [])
        {
            var valves = View.ValvesOf(station).Select(v => v.Id).ToList();
            var by = valves.Select(v => By(station, v, reached)).DefaultIfEmpty(By(station, station, reached)).ToList();
            if (by.TrueForAll(b => b is not null))
            {
                dry[station] = by[0]!;
            }
        }

        return dry;
    }

    private string? By(string station, string valve, HashSet<string> reached) =>
        street is not null ? street
        : shut.Contains(valve) ? valve
        : owner.Graph.Knows(valve) ? (reached.Contains(valve) ? null : shut.Where(View.IsolationValves.ContainsKey).Order(StringComparer.Ordinal).FirstOrDefault())
        : shut.Where(View.IsolationValves.ContainsKey).Order(StringComparer.Ordinal).FirstOrDefault(i => owner.LiesBehind(i, [valve, station]) == true);
}
