using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>Chances that isolation valves do not hold: as the practice book has it, or as the meter showed with everything off while one was shut.</summary>
internal sealed class HeldBack
{
    private readonly double beforehand;
    private readonly Dictionary<string, double> seen = new(StringComparer.Ordinal);

    public HeldBack(WaterCase owner)
    {
        beforehand = owner.Water.Isolating.NotHolding;
        WaterReading[] idle = [.. owner.Of(WaterMeasure.MeterFlow).Where(r => r.IsIdle)];
        var holdings = new Holdings(owner, idle);
        if (holdings.Doubted.Count == 0)
        {
            return;
        }

        // Stations say next to nothing of it; without them the answer is there at once.
        var groups = new LeakGroups(new LeakSourceFinder(owner, idle, holdings.Doubted), holdings);
        var sum = new WaterSum(owner, idle, groups, [], new SupplyWater(owner, new StationFlows(owner)));
        foreach (var (k, id) in holdings.Doubted.Index())
        {
            seen[id] = sum.Passes(k);
        }
    }

    public double NotHolding(string isolation) => seen.GetValueOrDefault(isolation, beforehand);

    /// <summary>Where anything was seen of it.</summary>
    public double? Holds(string isolation) => seen.TryGetValue(isolation, out var not) ? 1 - not : null;
}
