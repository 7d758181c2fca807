using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>
/// What is believed of the water: the state of the supply, what runs while nothing should, and the state of each station, all weighed
/// together. Given the supply and the amounts that run elsewhere, stations are independent of each other. See docs/models/water.md.
/// </summary>
internal sealed class WaterBelief
{
    private readonly double[][] stationShares;

    public WaterBelief(WaterCase owner, IReadOnlyDictionary<string, IReadOnlyList<WiringState>> wiring)
    {
        Owner = owner;
        Meter = [.. owner.Of(WaterMeasure.MeterFlow)];
        Flows = new StationFlows(owner);
        Supply = new SupplyWater(owner, Flows);
        Stations =
        [
            .. owner.View.Stations.Keys
                .Select(s => new StationWater(owner, s, Flows, wiring.GetValueOrDefault(s, WiringState.Sound), Meter))
                .Where(s => s.IsNoted),
        ];
        Sources = new LeakSourceFinder(owner, Meter).Find();
        SupplyStates = [null, .. owner.Water.Of(WaterScope.Supply)];
        var sum = new WaterSum(owner, Meter, Sources, Stations, SupplyStates, Supply);
        (SupplyShares, Unmodelled, Sets, Running) = (sum.SupplyShares, sum.Unmodelled, LeakSets.Of(sum), LeakSets.Running(sum));
        stationShares = [.. Stations.Select(sum.SharesOf)];
    }

    public WaterCase Owner { get; }

    /// <summary>Readings of the meter, in the order of the log.</summary>
    public IReadOnlyList<WaterReading> Meter { get; }

    public StationFlows Flows { get; }

    public SupplyWater Supply { get; }

    /// <summary>Stations of which anything is noted.</summary>
    public IReadOnlyList<StationWater> Stations { get; }

    public IReadOnlyList<LeakSource> Sources { get; }

    /// <summary>Null for a supply in order.</summary>
    public IReadOnlyList<WaterFault?> SupplyStates { get; }

    public IReadOnlyList<double> SupplyShares { get; }

    /// <summary>Number of the state that is most likely.</summary>
    public int LikeliestSupply => Enumerable.Range(0, SupplyShares.Count).MaxBy(h => SupplyShares[h]);

    /// <summary>Most probable first; with what is not modelled they sum to one.</summary>
    public IReadOnlyList<LeakSet> Sets { get; }

    public double Unmodelled { get; }

    /// <summary>Probabilities of what runs now while nothing should, over the amounts of the grid.</summary>
    public IReadOnlyList<double> Running { get; }

    /// <summary>Probabilities of a station's states.</summary>
    public IReadOnlyList<double> SharesOf(int station) => stationShares[station];
}
