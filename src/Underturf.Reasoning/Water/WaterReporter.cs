using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Reasoning.Water;

/// <summary>Puts together what is believed of the water.</summary>
internal sealed class WaterReporter(WaterBelief belief, OpenQuestion? idle)
{
    /// <summary>What is less likely is not listed.</summary>
    private const double Least = 1e-3;

    private WaterCase Owner => belief.Owner;

    private PropertyView View => Owner.View;

    public WaterReport Write()
    {
        var leading = idle?.Explanations[0];
        return new WaterReport(leading?.Summary, leading?.Probability, idle?.WaterLost, [.. Sorted().Select(Station)], [.. View.IsolationValves.OrderBy(i => View.Name(i.Key), NaturalOrder.Instance).Select(i => Shuts(i.Key))])
        {
            Sources = [.. Sources()],
            Drainage = [.. Sorted().SelectMany(Owner.Drainage.Of)],
            Devices = [.. View.WaterSupplies.Keys.SelectMany(Devices)],
            Supply = [.. States(belief.SupplyStates.Select((f, k) => (f.Faults.Select(w => w.Id).ToArray(), belief.SupplyShares[k])))],
        };
    }

    private IEnumerable<BelievedSource> Sources() => belief.Sets
        .SelectMany(set => set.Groups.SelectMany((group, g) => group.Sources.Select((source, k) => (Source: source, Share: set.Probability * set.Shares[g][k]))))
        .Where(s => !s.Source.Cured)
        .GroupBy(s => (s.Source.Fault.Id, s.Source.Place))
        .Select(g => new BelievedSource(g.Key.Id, g.First().Source.Id, g.Key.Place, g.Sum(s => s.Share)))
        .Where(s => s.Probability >= Least)
        .OrderByDescending(s => s.Probability);

    private static IEnumerable<BelievedState> States(IEnumerable<(string[] Faults, double Share)> states) => states
        .GroupBy(s => string.Join(" + ", s.Faults))
        .Select(g => new BelievedState(g.First().Faults, g.Sum(s => s.Share)))
        .Where(s => s.Probability >= Least)
        .OrderByDescending(s => s.Probability);

    private IEnumerable<string> Sorted() => View.Stations.OrderBy(s => View.Name(s.Value.Controller), NaturalOrder.Instance).ThenBy(s => s.Value.Terminal).ThenBy(s => s.Key, NaturalOrder.Instance).Select(s => s.Key);

    private StationBelief Station(string id)
    {
        var read = belief.Meter.LastOrDefault(r => r.Station == id)?.Si;
        var index = Enumerable.Range(0, belief.Stations.Count).Where(k => belief.Stations[k].Station == id).Select(k => (int?)k).FirstOrDefault();
        var first = index is { } known ? ToldState.Of(belief, known)[0] : null;
        return new StationBelief(id, View.StationNumber(id), View.Stations[id].Waters, read, first?.Words(belief.Stations[index!.Value]), first?.Share)
        {
            Caught = Owner.CaughtOn(id),
            States = index is { } at ? [.. States(belief.Stations[at].States.Select((s, k) => (s.Faults.Select(f => f.Id).Order(StringComparer.Ordinal).ToArray(), belief.SharesOf(at)[k])))] : [],
        };
    }

    private IEnumerable<DeviceLoss> Devices(string supply)
    {
        var of = View.WaterSupplies.Count > 1 ? $" of {View.Name(supply)}" : string.Empty;
        return Owner.DevicesOf(supply).All.Select(d => new DeviceLoss(d.Name + of, d.From, d.Curve.LossMetres(belief.Supply.UsualFlow) * Owner.Fluid.PascalsPerMetre, belief.Supply.UsualFlow));
    }

    private ShutLine Shuts(string id)
    {
        var shut = Owner.ShutAt(Moment.Last).Contains(id);
        var graph = Owner.Graph;
        double? held = belief.NotHolding.TryGetValue(id, out var not) ? 1 - not : null;
        if (graph.Knows(id))
        {
            var (all, left) = (graph.Reached(_ => false), graph.Reached(other => other == id));
            return new ShutLine(id, View.Name(id), Numbers(View.Stations.Keys.Where(s => View.ValvesOf(s).Any(v => all.Contains(v.Id) && !left.Contains(v.Id)))), ByPipes: true, shut) { Holds = held };
        }

        var told = Owner.ToldBehind(id).Count > 1;
        return new ShutLine(id, View.Name(id), Numbers(Owner.ToldStationsBehind(id)), told ? false : null, shut) { Holds = held };
    }

    private IReadOnlyList<string> Numbers(IEnumerable<string> stations) => [.. stations.Select(View.StationNumber).Order(NaturalOrder.Instance)];
}
