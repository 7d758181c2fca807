using Underturf.Property.Practice;

namespace Underturf.Simulation;

/// <summary>What a whole property adds to the drawing of faults: phases that aged, commons and controllers that there are several of.</summary>
internal sealed class FaultSetting(PropertyPlan plan, double sameStationShare)
{
    private readonly Dictionary<string, int> phases = plan.Stations.ToDictionary(s => s.Id, s => s.Phase, StringComparer.Ordinal);

    /// <summary>Share of faults that fall on a station which has one.</summary>
    public double SameStationShare => sameStationShare;

    /// <summary>The common of each station.</summary>
    public IReadOnlyDictionary<string, string> Commons { get; } = plan.Stations.ToDictionary(s => s.Id, plan.CommonOf, StringComparer.Ordinal);

    public IReadOnlyList<string?> Controllers { get; } = [.. Enumerable.Range(0, plan.Terrain.Controllers.Count).Select(PropertyPlan.ControllerId)];

    /// <summary>How much more often than its rate a fault happens to a station's own part.</summary>
    public double TroubleOf(string station, FaultScope scope) => plan.Phases[phases[station]].Trouble(scope);

    /// <summary>The same of what stations share at a place.</summary>
    public double TroubleAt(string place, FaultScope scope) => plan.Phases[plan.PhaseAt(place)].Trouble(scope);
}
