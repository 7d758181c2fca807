namespace Underturf.Reasoning.Water;

/// <summary>Where water comes to while some things are shut, by the pipes that are noted and the master valves of the controllers.</summary>
internal sealed class WaterPaths(WaterCase owner)
{
    private readonly Dictionary<string, HashSet<string>> reached = new(StringComparer.Ordinal);

    /// <summary>What stands shut, but for some.</summary>
    public static IReadOnlySet<string> Without(IReadOnlySet<string> shut, IReadOnlyCollection<string> open)
    {
        var left = new HashSet<string>(shut, StringComparer.Ordinal);
        left.ExceptWith(open);
        return left;
    }

    public HashSet<string> Reached(WaterReading reading, IReadOnlySet<string> shut)
    {
        var open = reading.Running.Select(MasterOf).OfType<string>().Distinct().Order(StringComparer.Ordinal).ToList();
        var key = $"{string.Join('+', open)}|{string.Join('|', shut.Order(StringComparer.Ordinal))}";
        if (!reached.TryGetValue(key, out var set))
        {
            reached[key] = set = owner.Graph.Reached(id => shut.Contains(id) || (owner.Graph.Masters.Contains(id) && !open.Contains(id)));
        }

        return set;
    }

    public bool MasterIsPiped(string? station) => MasterOf(station) is { } master && owner.Graph.Knows(master);

    /// <summary>A normally closed master valve lets water to the others only while a station of its controller runs.</summary>
    public bool MasterLets(string? station, WaterReading reading) => MasterOf(station) is not { } master || reading.Running.Any(r => MasterOf(r) == master);

    private string? MasterOf(string? station) =>
        station is not null && owner.View.Stations.TryGetValue(station, out var known) && owner.View.Controllers.TryGetValue(owner.View.Identity.Of(known.Controller), out var controller) && controller.Master is { } master
            ? owner.View.Identity.Of(master)
            : null;
}
