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
        Flows = new StationFlows(owner);
        Supply = new SupplyWater(owner, Flows);
        Meter = Supply.DrawnDown(owner.Of(WaterMeasure.MeterFlow));
        var heldDown = new HeldDown(owner.Water, Supply);
        Stations =
        [
            .. owner.View.Stations.Keys
                .Select(s => new StationWater(owner, s, Flows, wiring.GetValueOrDefault(s, WiringState.Sound), Meter, heldDown))
                .Where(s => s.IsNoted),
        ];
        foreach (var (index, reading) in Meter.Index().Where(r => r.Item.Together.Count > 0 && r.Item.Together.All(s => owner.IsAsNow(s, r.Item.Moment))))
        {
            var together = Stations.Where(s => reading.Together.Contains(s.Station)).ToList();
            var run = new RunTogether(reading, index, Supply, together);
            together.ForEach(s => s.Join(run));
        }

        var holdings = new Holdings(owner, Meter);
        var groups = new LeakGroups(new LeakSourceFinder(owner, Meter, holdings.Doubted), holdings);
        var sum = new WaterSum(owner, Meter, groups, Stations, Supply);
        (SupplyShares, Unmodelled, Sets, Running) = (sum.SupplyShares, sum.Unmodelled, LeakSets.Of(sum), LeakSets.Running(sum));
        NotHolding = holdings.Doubted.Select((id, k) => (id, sum.Passes(k))).ToDictionary(h => h.id, h => h.Item2, StringComparer.Ordinal);
        stationShares = [.. Stations.Select(sum.SharesOf)];
    }

    public WaterCase Owner { get; }

    /// <summary>Readings of the meter, in the order of the log.</summary>
    public IReadOnlyList<WaterReading> Meter { get; }

    public StationFlows Flows { get; }

    public SupplyWater Supply { get; }

    /// <summary>Stations of which anything is noted.</summary>
    public IReadOnlyList<StationWater> Stations { get; }

    /// <summary>Of each isolation valve that was shut for a reading of the meter, the chance that it does not hold.</summary>
    public IReadOnlyDictionary<string, double> NotHolding { get; }

    public IReadOnlyList<SupplyState> SupplyStates => Supply.States;

    public IReadOnlyList<double> SupplyShares { get; }

    /// <summary>Number of the state that is most likely.</summary>
    public int LikeliestSupply => Enumerable.Range(0, SupplyShares.Count).MaxBy(h => (ShareOfSupply(h), SupplyShares[h]));

    /// <summary>Of the same faults, whether they reach the stations or not.</summary>
    public double ShareOfSupply(int number) => Enumerable.Range(0, SupplyShares.Count).Where(h => SupplyStates[h].Id == SupplyStates[number].Id).Sum(h => SupplyShares[h]);

    /// <summary>Most probable first; with what is not modelled they sum to one.</summary>
    public IReadOnlyList<LeakSet> Sets { get; }

    public double Unmodelled { get; }

    /// <summary>Probabilities of what runs now while nothing should, over the amounts of the grid.</summary>
    public IReadOnlyList<double> Running { get; }

    /// <summary>Probabilities of a station's states.</summary>
    public IReadOnlyList<double> SharesOf(int station) => stationShares[station];
}
