using Underturf.Reasoning;

namespace Underturf.Planning.Rework;

/// <summary>A valve that needs a conductor of its own.</summary>
/// <param name="Number">Which of the station's valves it is, counted from one; the first keeps the conductor.</param>
internal sealed record Need(SharedStation Shared, SharedValve Valve, int Number)
{
    public string Station => Shared.Station;

    public string Controller => Shared.Path.Controller;

    public string Joint => Valve.Joint!;

    /// <summary>Its own conductor comes to the controller: only the terminal is shared.</summary>
    public bool PartsAtController => Joint == Controller;

    public static IEnumerable<Need> All(Site site) =>
        from shared in site.Shared
        where !site.Kept.Contains(shared.Station)
        from valve in shared.Valves.Index().Skip(1)
        select new Need(shared, valve.Item, valve.Index + 1);
}

/// <summary>What can be done for a need, with what it takes.</summary>
/// <param name="Wire">Id of the conductor's end at the controller, or of the station that is reclaimed.</param>
/// <param name="Second">The same of the one that goes beside the common.</param>
/// <param name="Terminal">The terminal that it sits on already.</param>
/// <param name="Proves">Whether it has to be proven first.</param>
internal sealed record Remedy(Alternative Told, string? Wire = null, string? Second = null, int? Terminal = null, bool Proves = false, string? Gauge = null)
{
    public bool TakesTerminal => Told.Kind is RemedyKind.OwnConductor or RemedyKind.Spare or RemedyKind.SpareAndCommon or RemedyKind.Pull && Terminal is null;
}
