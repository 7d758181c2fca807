using Underturf.FieldLog;
using Underturf.Networks.Hydraulics.Emptying;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>Works out what runs out of each lateral once its valve shuts, where heights are noted.</summary>
internal sealed class DrainageFinder(WaterCase owner)
{
    private readonly Dictionary<string, IReadOnlyList<LateralDrainage>> known = new(StringComparer.Ordinal);

    private LowHeadPractice Book => owner.Water.LowHead;

    /// <summary>One for each lateral of a station; none where too few heights are noted to tell.</summary>
    public IReadOnlyList<LateralDrainage> Of(string station) => known.TryGetValue(station, out var found) ? found : known[station] = [.. Find(station)];

    private IEnumerable<LateralDrainage> Find(string station)
    {
        if (owner.View.Outlets.Values.All(o => owner.View.Identity.Of(o.Station) != station))
        {
            return [];
        }

        var valves = owner.View.ValvesOf(station).Select(v => v.Id).Order(StringComparer.Ordinal).ToList();
        return (valves.Count > 0 ? valves : [station]).Select(root => Find(new Lateral(owner, station, root, valves.Count < 2), valves.Count > 0 ? owner.View.Name(root) : null)).OfType<LateralDrainage>();
    }

    private LateralDrainage? Find(Lateral lateral, string? valve)
    {
        if (!lateral.HasSlope)
        {
            return null;
        }

        var ((_, fewest, least), (placed, all, most)) = (Drained(lateral, most: false), Drained(lateral, most: true));
        if (fewest is null || all is null)
        {
            return null;
        }

        var above = all.Outlets.Select((o, k) => (Outlet: placed[o.Number], o.AboveMetres)).ToList();
        var level = all.HeadMetres <= Book.RestMetres;
        return new LateralDrainage(
            lateral.Station,
            owner.View.StationNumber(lateral.Station),
            valve,
            level ? [] : [.. above.Where(o => o.AboveMetres <= Book.HeightsDifferMetres).Select(Low)],
            level ? [] : [.. above.Where(o => o.AboveMetres > Book.HeightsDifferMetres && o.AboveMetres < all.HeadMetres - Book.RestMetres).Select(Low)],
            all.HeadMetres,
            level ? 0 : least.LeastCubicMetres,
            level ? 0 : most.MostCubicMetres,
            level ? 0 : least.LeastSeconds,
            level ? 0 : most.MostSeconds,
            lateral.IsReckoned,
            lateral.Outlets.Where(o => o.Metres is null).Sum(o => o.Fact.Count),
            owner.Water.Of(WaterScope.Station).Any(f => f.Drains && owner.IsCured(f, owner.ThingsOf(lateral.Station), Moment.Last)));
    }

    private (IReadOnlyList<LateralOutlet> Placed, LowHeadDrainage? Drainage, EmptyingEstimate Estimate) Drained(Lateral lateral, bool most)
    {
        var (network, behind, placed) = lateral.Network(most);
        var drainage = LowHeadDrainage.Of(network, behind);
        return drainage.Succeeded ? (placed, drainage.Value, drainage.Value.Empty(owner.Fluid, Book.DischargeLeast)) : (placed, null, default);
    }

    private static LowOutlet Low((LateralOutlet Outlet, double AboveMetres) at) => new(at.Outlet.Id, at.Outlet.Fact.What, at.Outlet.Fact.Count, at.AboveMetres);
}
