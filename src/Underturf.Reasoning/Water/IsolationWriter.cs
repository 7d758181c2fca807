using Underturf.FieldLog;
using Underturf.Networks.Hydraulics;
using Underturf.Networks.Hydraulics.Isolating;
using Underturf.Property;
using Underturf.Quantities;
using Underturf.Reasoning.Moves;

namespace Underturf.Reasoning.Water;

/// <summary>Says what to shut so that a place has no pressure, and what follows from it.</summary>
internal sealed class IsolationWriter
{
    private const string Caution = "Prove zero pressure before opening anything; muddy water must not flow back into the main; no energising with hands in. Local codes and licensed practice prevail.";

    private const string Street = "ask the water works to shut it in the street";

    private readonly WaterCase owner;
    private readonly Walks walks;
    private readonly PipeRecord pipes;
    private readonly HashSet<string> shutNow;

    /// <summary>Cost of what stands shut already: less than any other, more than nothing, so that only what parts the place counts.</summary>
    private const double Standing = 1e-6;

    public IsolationWriter(WaterCase owner, Walks walks)
    {
        (this.owner, this.walks) = (owner, walks);
        shutNow = [.. owner.ShutAt(Moment.Last), .. owner.OffAtSupply()];

        // Everything open: what may be opened while somebody works there is not left to chance, and what stands shut is part of the answer.
        pipes = new PipeRecord(owner, new SupplyCurve(1, 0), new HashSet<string>(), [.. View.Stations.Keys], _ => Units.From(1, "L/min"));
    }

    private PropertyView View => owner.View;

    private string Supply => owner.MeterPlace;

    private string SupplyName => View.WaterSupplies.Count > 0 ? View.Name(Supply) : "the point of connection";

    /// <param name="name">Label or id of a valve, station, box, fitting, pipe or isolation valve.</param>
    public Outcome<IsolationAnswer> Write(string name, string? at)
    {
        var found = Find(name);
        if (!found.Succeeded)
        {
            return found.Problem!;
        }

        var (id, node) = found.Value;
        var from = at ?? View.Controllers.Keys.FirstOrDefault() ?? Supply;
        return node is { } known ? Piped(id, known, from) : Told(id, from);
    }

    /// <summary>By the pipes that are noted.</summary>
    private Outcome<IsolationAnswer> Piped(string id, int node, string from)
    {
        var costs = Costs(from);
        var plan = IsolationPlan.Of(pipes.Network, node, costs);
        var needed = plan.Succeeded ? null : plan.Problem!.Remedy;
        if (!plan.Succeeded)
        {
            // What somebody said counts where the pipes that are noted end in nothing that can be shut.
            if (Before(id, from) is { } told && pipes.ElementOf(told) is null)
            {
                return Told(id, from);
            }

            // As a last resort everything is shut where it comes in.
            foreach (var supply in View.WaterSupplies.Keys)
            {
                costs[pipes.ElementOf(supply)!.Value] = CostNow(from, supply);
            }

            plan = IsolationPlan.Of(pipes.Network, node, costs);
            if (!plan.Succeeded)
            {
                return plan.Problem!;
            }
        }

        if (plan.Value.Shut.Count == 0)
        {
            // No pipe that is noted joins it to a point of connection: that is no proof that no water comes.
            return Told(id, from);
        }

        var shut = plan.Value.Shut.Select(IdOf).ToList();
        var dryNodes = plan.Value.Dry.ToHashSet();
        var dry = View.Stations.Keys.Where(s => View.ValvesOf(s).Any(v => pipes.NodeOf(v.Id) is { } up && dryNodes.Contains(up))).ToList();
        var otherwise = plan.Value.Shut.Select(e => (Element: e, Plan: plan.Value.Without(pipes.Network, e, costs)))
            .Select(o => new ShutOtherwise(View.Name(IdOf(o.Element)), o.Plan.Succeeded ? [.. o.Plan.Value.Shut.Select(IdOf).Select(View.Name)] : [View.WaterSupplies.ContainsKey(IdOf(o.Element)) ? Street : SupplyName]));
        return Answer(id, shut, from, dry, needed, [.. otherwise], Relief(dryNodes, dry), new HoleWriter(owner, pipes).Write(id, node, plan.Value.Shut, dry));
    }

    /// <summary>By what somebody has said lies behind each isolation valve; where nobody has, at the point of connection.</summary>
    private IsolationAnswer Told(string id, string from)
    {
        var before = Before(id, from);
        var dry = before is null ? [.. View.Stations.Keys] : owner.ToldStationsBehind(before);
        var needed = before is null ? $"no pipe to {View.Name(id)} is noted, and nobody has said which isolation valve shuts it off" : null;
        return Answer(id, [before ?? Supply], from, dry, needed, before is null ? [] : [new ShutOtherwise(View.Name(before), [SupplyName])], Relief([], dry), new HoleWriter(owner, pipes).Write(id, null, [], dry));
    }

    /// <summary>The nearest of the isolation valves that somebody said shut it off.</summary>
    private string? Before(string id, string from)
    {
        string[] things = [id, .. View.Valves.TryGetValue(id, out var valve) && valve.Station is { } station ? [View.Identity.Of(station)] : Array.Empty<string>(), .. View.ValvesOf(id).Select(v => v.Id)];
        return View.IsolationValves.Keys.Where(i => i != id && owner.ToldBehind(i) is var behind && things.Any(behind.Contains)).OrderBy(i => Cost(from, i)).FirstOrDefault();
    }

    private IsolationAnswer Answer(string id, IReadOnlyList<string> shut, string from, IReadOnlyList<string> dry, string? needed, IReadOnlyList<ShutOtherwise> otherwise, IReadOnlyList<string> relieve, HoleAnswer? hole)
    {
        var stands = shut.Where(shutNow.Contains).Select(s => new ShutStep(Called(s), s, walks.Minutes(from, s), 0) { Holds = owner.Held.Holds(s) }).ToList();
        var steps = Round(shut.Where(s => !shutNow.Contains(s)), from);
        return new IsolationAnswer(
            Notebook.Engine,
            owner.Book.Version,
            id,
            View.Name(id),
            stands,
            steps,
            steps.Sum(s => s.WalkMinutes + s.TurnMinutes),
            shut.Aggregate(1.0, (all, s) => all * (1 - owner.Held.NotHolding(s))),
            [.. dry.Select(View.StationNumber).Order(NaturalOrder.Instance)],
            needed,
            otherwise,
            relieve,
            hole,
            Refill(shut),
            Caution);
    }

    /// <summary>From one to the next, the nearest first.</summary>
    private List<ShutStep> Round(IEnumerable<string> shut, string from)
    {
        var steps = new List<ShutStep>();
        var at = from;
        foreach (var next in shut.OrderBy(s => walks.Minutes(from, s)))
        {
            steps.Add(new ShutStep(Called(next), next, walks.Minutes(at, next), owner.Water.Isolating.TurnMinutes) { Holds = owner.Held.Holds(next) });
            at = next;
        }

        return steps;
    }

    private string Called(string id) => id == Supply || View.WaterSupplies.ContainsKey(id) ? $"everything at {Supplied(id)}" : View.Name(id);

    /// <summary>By its id too where two points of connection are called alike.</summary>
    private string Supplied(string id) => !View.WaterSupplies.ContainsKey(id) ? SupplyName
        : View.WaterSupplies.Keys.Count(s => View.Name(s) == View.Name(id)) > 1 ? $"{View.Name(id)} {id}" : View.Name(id);

    private List<string> Relief(HashSet<int> dryNodes, IReadOnlyList<string> dry)
    {
        var valves = dry.SelectMany(s => View.ValvesOf(s).Select(v => (Station: s, v.Id))).ToList();
        var lowest = valves.Where(v => pipes.NodeOf(v.Id) is { } up && dryNodes.Contains(up)).OrderBy(v => pipes.Network.Nodes[pipes.NodeOf(v.Id)!.Value].ElevationMetres).ThenBy(v => v.Id, StringComparer.Ordinal).Select(v => v.Station).Concat(dry).FirstOrDefault();
        return
        [
            lowest is null ? "open the lowest bleed behind what was shut, and leave it open" : $"open the bleed of the valve of {View.Name(lowest)}, {(View.Fittings.Values.Any(f => f.Elevation is not null) ? "the lowest that is known" : "or the lowest that you know,")} behind what was shut, and leave it open",
            "wait until nothing comes; a gauge there shows nothing and goes on showing nothing for five minutes",
            lowest is null ? "the meter shows the same with it open and shut" : $"run {View.Name(lowest)} from the controller: nothing waters; then switch it off and lock it off",
        ];
    }

    private List<string> Refill(IReadOnlyList<string> shut)
    {
        var names = string.Join(" and ", shut.Select(s => s == Supply ? SupplyName : View.Name(s)));
        var speed = owner.Water.Isolating.FillMetresPerSecond;
        var bore = shut.SelectMany(s => View.Pipes.Values.Where(p => View.Identity.Of(p.From) == s).Select(p => PipeBores.Metres(owner.Water, p))).OfType<double>().DefaultIfEmpty().Min();
        var flow = bore > 0 ? $", at no more than {new WaterSay(owner.History.Facts.UsesUsUnits).Flow(speed * HoleDischarge.AreaSquareMetres(bore))} on the meter" : string.Empty;
        return
        [
            $"leave the bleeds open and open {names} a little{flow}",
            "shut each bleed once it spits no more, the lowest first",
            "open the rest slowly; flush the lateral before its last outlet goes on",
            "run the valve that was worked on, watch it open, close and stay dry; read the meter with everything off",
        ];
    }

    private Dictionary<int, double> Costs(string from) => View.IsolationValves.Keys
        .Where(i => pipes.ElementOf(i) is not null)
        .ToDictionary(i => pipes.ElementOf(i)!.Value, i => CostNow(from, i));

    private double CostNow(string from, string isolation) => shutNow.Contains(isolation) ? Standing : Cost(from, isolation);

    /// <summary>The way there and the turning; and what it costs where it turns out not to hold, times the chance of that.</summary>
    private double Cost(string from, string isolation) =>
        walks.Minutes(from, isolation) + owner.Water.Isolating.TurnMinutes + (owner.Held.NotHolding(isolation) * owner.Book.Loss.WrongRepairMinutes);

    private string IdOf(int element) => View.IsolationValves.Keys.Concat(View.WaterSupplies.Keys).First(i => pipes.ElementOf(i) == element);

    private Outcome<(string Id, int? Node)> Find(string name)
    {
        var found = new NameFinder(View).Find([.. View.Valves.Keys, .. View.Stations.Keys, .. View.Boxes.Keys, .. View.Fittings.Keys, .. View.Pipes.Keys, .. View.IsolationValves.Keys], name, "place");
        return found.Succeeded ? (found.Value, NodeOf(found.Value)) : found.Problem!;
    }

    /// <summary>Where the thing has its water from, as far as pipes are noted.</summary>
    private int? NodeOf(string id) =>
        View.Stations.ContainsKey(id) ? View.ValvesOf(id).Select(v => pipes.NodeOf(v.Id)).FirstOrDefault(n => n is not null && IsPiped(n.Value))
        : View.Boxes.ContainsKey(id) ? View.Valves.Where(v => v.Value.Box is { } box && View.Identity.Of(box) == id).Select(v => pipes.NodeOf(v.Key)).FirstOrDefault(n => n is not null && IsPiped(n.Value))
        : View.Pipes.TryGetValue(id, out var pipe) ? pipes.DownNodeOf(View.Identity.Of(pipe.From))
        : View.IsolationValves.ContainsKey(id) ? pipes.NodeOf(id)
        : pipes.NodeOf(id) is { } node && IsPiped(node) ? node : null;

    private bool IsPiped(int node) => node != pipes.PointOfConnection || View.Pipes.Count > 0;
}
