using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics.Emptying;

/// <summary>What runs out of a station's outlets each time its valve shuts: all that stands over the lowest of them.</summary>
/// <param name="Outlets">That it can run out of, the lowest first.</param>
/// <param name="Water">What stands higher than the lowest in the pipes.</param>
public sealed record LowHeadDrainage(IReadOnlyList<WeepingOutlet> Outlets, StoredWater Water)
{
    /// <summary>Steps of a band of water over which its time is summed; with a lone nozzle one would do.</summary>
    private const int Steps = 64;

    /// <summary>Number of the outlet that runs longest.</summary>
    public int LowestOutlet => Outlets[0].Number;

    /// <summary>How high the highest water stands over the lowest outlet, air following or not.</summary>
    public double HeadMetres => Water.Possible.Select(b => b.To).DefaultIfEmpty().Max();

    /// <param name="behindValve">The node behind the station's valve, which is shut in the network.</param>
    public static Outcome<LowHeadDrainage> Of(PipeNetwork network, int behindValve)
    {
        var joined = Reach.AirDownTo(network, [behindValve]);
        var outlets = Enumerable.Range(0, network.Outlets.Count).Where(o => double.IsFinite(joined[network.Outlets[o].Node])).OrderBy(Height).ToList();
        if (outlets.Count == 0)
        {
            return new Problem($"junction '{network.Nodes[behindValve].Name}'", "leads to no outlet", "Note the station's outlets first");
        }

        double Height(int outlet) => network.Nodes[network.Outlets[outlet].Node].ElevationMetres;
        var water = StoredWater.Above(network, network.Outlets[outlets[0]].Node, [.. outlets.Skip(1).Select(o => network.Outlets[o].Node)]);
        return water.Succeeded
            ? new LowHeadDrainage([.. outlets.Select(o => new WeepingOutlet(o, Height(o) - Height(outlets[0]), network.Outlets[o].Outlet))], water.Value)
            : water.Problem!;
    }

    /// <summary>
    /// How much runs out and how long that takes. Quasi-steady: dt = A dz / Q(z) for the area A of the surface, Q the sum of k (rho g (z - a))^x over the outlets
    /// below it at heights a. At least: what surely comes, through all of them; at most: all, through the lowest alone.
    /// </summary>
    /// <param name="leastShare">Of its law that the lowest gives at worst: it has shut its nozzle in part.</param>
    public EmptyingEstimate Empty(Water water, double leastShare) => new(
        Water.LeastCubicMetres,
        Water.MostCubicMetres,
        Water.Sure.Sum(b => Seconds(b, Outlets, water.PascalsPerMetre)),
        Water.Possible.Sum(b => Seconds(b, [Outlets[0]], water.PascalsPerMetre)) / leastShare);

    /// <summary>By the middle of equal steps in the root of the height, in which the time of a nozzle is even: exact for one of x = 0.5.</summary>
    private static double Seconds(Band band, IReadOnlyList<WeepingOutlet> outlets, double pascalsPerMetre)
    {
        var (from, step, sum) = (Math.Sqrt(band.From), (Math.Sqrt(band.To) - Math.Sqrt(band.From)) / Steps, 0.0);
        for (var k = 0; k < Steps; k++)
        {
            var root = from + ((k + 0.5) * step);
            sum += 2 * root * step / outlets.Sum(o => o.Law.FlowCubicMetresPerSecond(((root * root) - o.AboveMetres) * pascalsPerMetre));
        }

        return band.Area * sum;
    }
}

/// <summary>An outlet that water runs out of by its weight.</summary>
/// <param name="Number">In the network.</param>
/// <param name="AboveMetres">Over the lowest.</param>
public sealed record WeepingOutlet(int Number, double AboveMetres, Outlet Law);
