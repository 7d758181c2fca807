using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics.Emptying;

/// <summary>What runs out of the lowest outlet each time a station's valve shuts.</summary>
/// <param name="LowestOutlet">Number of the outlet that it runs out of.</param>
/// <param name="Water">What stands higher than it in the pipes.</param>
public sealed record LowHeadDrainage(int LowestOutlet, StoredWater Water)
{
    /// <param name="behindValve">The node behind the station's valve, which is shut in the network.</param>
    public static Outcome<LowHeadDrainage> Of(PipeNetwork network, int behindValve)
    {
        var joined = Reach.AirDownTo(network, [behindValve]);
        var outlets = Enumerable.Range(0, network.Outlets.Count).Where(o => double.IsFinite(joined[network.Outlets[o].Node])).ToList();
        if (outlets.Count == 0)
        {
            return new Problem($"junction '{network.Nodes[behindValve].Name}'", "leads to no outlet", "Note the station's outlets first");
        }

        var lowest = outlets.MinBy(o => network.Nodes[network.Outlets[o].Node].ElevationMetres);
        var water = StoredWater.Above(network, network.Outlets[lowest].Node, [.. outlets.Where(o => o != lowest).Select(o => network.Outlets[o].Node)]);
        return water.Succeeded ? new LowHeadDrainage(lowest, water.Value) : water.Problem!;
    }
}
