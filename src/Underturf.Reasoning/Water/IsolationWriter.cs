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
    private readonly StationsDry stations;
    private readonly HashSet<string> shutNow;

    /// <summary>Cost of what stands shut already: less than any other, more than nothing, so that only what parts the place counts.</summary>
    private const double Standing = 1e-6;

    public IsolationWriter(WaterCase owner, Walks walks)
    {
        (this.owner, this.walks) = (owner, walks);
        shutNow = [.. owner.ShutAt(Moment.Last), .. owner.OffAtSupply()];

        // Everything open: what may be opened while somebody works there is not left to chance, and what stands shut is part of the answer.
        pipes = PipeRecord.Open(owner);
        stations = new StationsDry(owner, pipes);
    }

    private PropertyView View => owner.View;

    private string Supply => owner.MeterPlace;

    private string SupplyName => View.WaterSupplies.Count > 0 ? string.Join(" and ", owner.Supplies.Select(Supplied)) : "the point of connection";

    /// <param name="name">Label or id of a valve, station, box, fitting, pipe or isolation valve.</param>
    public Outcome<IsolationAnswer> Write(string name, string? at)
    {
        var found = IsolationPlace.Find(View, pipes, name);
        if (!found.Succeeded)
        {
            return found.Problem!;
        }

        var (place, from) = (found.Value, at ?? View.Controllers.Keys.FirstOrDefault() ?? Supply);
        var told = new List<string>();
        foreach (var thing in place.Things.Where(t => !t.Nodes.Any(stations.IsJoined)))
        {
            // That no pipe which is noted joins it to a point of connection is no proof that no water comes.
            if (Before(place.Id, thing.Id, from) is not { } before)
            {
                return Everything(place, thing, from);
            }

            told.AddRange(Ring(place, before));
        }

        int[] nodes = [.. place.Things.SelectMany(t => t.Nodes).Where(stations.IsJoined)];
        return nodes.Length > 0 ? Piped(place, nodes, told, from) : Told(place, told, from);
    }

    /// <summary>By the pipes that are noted.</summary>
    /// <param name="told">What somebody said shuts off the rest of the place.</param>
    private Outcome<IsolationAnswer> Piped(IsolationPlace place, int[] nodes, IReadOnlyList<string> told, string from)
    {
        var costs = Costs(place.Id, from);
        var plan = IsolationPlan.Of(pipes.Network, nodes, costs);
        var needed = plan.Succeeded ? null : plan.Problem!.Remedy;
        if (!plan.Succeeded)
        {
            // What somebody said counts where the pipes that are noted end in nothing that can be shut.
            if (Before(place.Id, place.Id, from) is { } before && pipes.ElementOf(before) is null)
            {
                return Told(place, [.. Ring(place, before), .. told], from);
            }

            // As a last resort everything is shut where it comes in.
            foreach (var supply in View.WaterSupplies.Keys)
            {
                costs[pipes.ElementOf(supply)!.Value] = CostNow(from, supply);
            }

            plan = IsolationPlan.Of(pipes.Network, nodes, costs);
            if (!plan.Succeeded)
            {
                return plan.Problem!;
            }
        }

        var otherwise = plan.Value.Shut.Select(e => (Element: e, Plan: plan.Value.Without(pipes.Network, e, costs)))
            .Select(o => new ShutOtherwise(View.Name(IdOf(o.Element)), o.Plan.Succeeded ? [.. o.Plan.Value.Shut.Select(IdOf).Select(View.Name)] : [View.WaterSupplies.ContainsKey(IdOf(o.Element)) ? Street : SupplyName]));
        return Answer(place, plan.Value.Shut.Select(IdOf).Concat(told), from, needed, [.. otherwise, .. Otherwise(told)], nodes[0]);
    }

    /// <summary>By what somebody has said lies behind each isolation valve.</summary>
    private IsolationAnswer Told(IsolationPlace place, IReadOnlyList<string> told, string from) => Answer(place, told, from, null, Otherwise(told), null);

    /// <summary>At every point of connection, where nobody knows which of what lies between feeds it.</summary>
    private IsolationAnswer Everything(IsolationPlace place, (string Id, IReadOnlyList<int> Nodes) thing, string from)
    {
        var name = thing.Id == place.Id ? View.Name(place.Id) : $"{View.Name(thing.Id)} of {View.Name(place.Id)}";
        var lacks = thing.Nodes.Count == 0 ? $"no pipe to {name} is noted" : $"{(View.Pipes.ContainsKey(thing.Id) ? name : $"the pipe to {name}")} is joined to nothing that water comes from";
        return Answer(place, owner.Supplies, from, $"{lacks}, and nobody has said which isolation valve shuts it off", [.. owner.Supplies.Where(View.WaterSupplies.ContainsKey).Select(s => new ShutOtherwise(Supplied(s), [Street]))], null);
    }

    /// <summary>What is worked on itself is not shut for it.</summary>
    private IEnumerable<string> Ring(IsolationPlace place, string before) => IsolationRings.Of(View, before).Where(i => i != place.Id);

    private ShutOtherwise[] Otherwise(IEnumerable<string> told) => [.. told.Distinct().Select(t => new ShutOtherwise(View.Name(t), [SupplyName]))];

    /// <summary>The nearest of the isolation valves that somebody said shut it off.</summary>
    private string? Before(string place, string id, string from)
    {
        string[] things = [place, id, .. View.Valves.TryGetValue(id, out var valve) && valve.Station is { } station ? [View.Identity.Of(station)] : Array.Empty<string>(), .. View.ValvesOf(id).Select(v => v.Id)];
        return View.IsolationValves.Keys.Where(i => i != id && owner.ToldBehind(i) is var behind && things.Any(behind.Contains)).OrderBy(i => Cost(from, i)).FirstOrDefault();
    }

    private IsolationAnswer Answer(IsolationPlace place, IEnumerable<string> all, string from, string? needed, IReadOnlyList<ShutOtherwise> otherwise, int? node)
    {
        var shut = all.Distinct(StringComparer.Ordinal).ToList();
        var (dry, may, every) = stations.Of(shut);
        var stands = shut.Where(shutNow.Contains).Select(s => new ShutStep(Called(s), s, walks.Minutes(from, s), 0) { Holds = owner.Held.Holds(s) }).ToList();
        var steps = Round(shut.Where(s => !shutNow.Contains(s)), from);
        return new IsolationAnswer(
            Notebook.Engine,
            owner.Book.Version,
            place.Id,
            View.Name(place.Id),
            stands,
            steps,
            steps.Sum(s => s.WalkMinutes + s.TurnMinutes),
            shut.Aggregate(1.0, (holds, s) => holds * (1 - owner.Held.NotHolding(s))),
            Numbers(dry),
            needed,
            otherwise,
            Relief(place, shut, dry),
            new HoleWriter(owner, pipes).Write(place.Id, node, [.. shut.Select(pipes.ElementOf).OfType<int>()], dry),
            Refill(shut),
            Caution)
        {
            MayGoDry = Numbers(may),
            EveryStationDry = every,
        };
    }

    private IReadOnlyList<string> Numbers(IEnumerable<string> ids) => [.. ids.Select(View.StationNumber).Order(NaturalOrder.Instance)];

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

    /// <summary>The lowest bleed that is known to lie behind what is shut, of a station that has water as long as that is open; where none is, the place's own.</summary>
    private List<string> Relief(IsolationPlace place, IReadOnlyCollection<string> shut, IReadOnlyList<string> dry)
    {
        var after = stations.After(shut);
        var telling = Telling(dry, after);
        var lowest = telling.SelectMany(s => View.ValvesOf(s).Select(v => (Station: s, Node: pipes.NodeOf(v.Id))))
            .Where(v => v.Node is { } up && stations.IsJoined(up) && !after[up])
            .OrderBy(v => pipes.Network.Nodes[v.Node!.Value].ElevationMetres).ThenBy(v => v.Station, NaturalOrder.Instance)
            .Select(v => v.Station)
            .Concat(telling.OrderByDescending(s => Concerns(place, s)).ThenBy(View.StationNumber, NaturalOrder.Instance))
            .FirstOrDefault();
        return
        [
            lowest is null ? "open the lowest bleed behind what was shut, and leave it open" : $"open the bleed of the valve of {View.Name(lowest)}, {(View.Fittings.Values.Any(f => f.Elevation is not null) ? "the lowest that is known" : "or the lowest that you know,")} behind what was shut, and leave it open",
            "wait until nothing comes; a gauge there shows nothing and goes on showing nothing for five minutes",
            lowest is null ? "the meter shows the same with it open and shut" : $"run {View.Name(lowest)} from the controller: nothing waters; then switch it off and lock it off",
            $"last at {View.Name(place.Id)} itself: run what is worked on and open its own bleed or first joint a little, standing aside; where water comes, something else feeds it: stop",
        ];
    }

    /// <summary>Stations that prove something by being dry: what stands shut already, or their own flow control, would keep them dry in any case, and of two valves one may still have water.</summary>
    private List<string> Telling(IReadOnlyList<string> dry, bool[] after)
    {
        var (dryNow, mayNow, _) = shutNow.Count > 0 ? stations.Of(shutNow) : ([], [], false);
        return [.. dry.Except(dryNow).Except(mayNow).Where(s => View.ValvesOf(s).All(v => !shutNow.Contains(v.Id) && (pipes.NodeOf(v.Id) is not { } node || !stations.IsJoined(node) || !after[node])))];
    }

    private List<string> Refill(IReadOnlyList<string> shut)
    {
        var names = string.Join(" and ", shut.Select(s => s == Supply || View.WaterSupplies.ContainsKey(s) ? Supplied(s) : View.Name(s)));
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

    private bool Concerns(IsolationPlace place, string station) => place.Id == station || View.ValvesOf(station).Any(v => place.Things.Any(t => t.Id == v.Id));

    /// <summary>Of all but the place itself.</summary>
    private Dictionary<int, double> Costs(string place, string from) => View.IsolationValves.Keys
        .Where(i => i != place && pipes.ElementOf(i) is not null)
        .ToDictionary(i => pipes.ElementOf(i)!.Value, i => CostNow(from, i));

    private double CostNow(string from, string isolation) => shutNow.Contains(isolation) ? Standing : Cost(from, isolation);

    /// <summary>The way there and the turning; and what it costs where it turns out not to hold, times the chance of that.</summary>
    private double Cost(string from, string isolation) =>
        walks.Minutes(from, isolation) + owner.Water.Isolating.TurnMinutes + (owner.Held.NotHolding(isolation) * owner.Book.Loss.WrongRepairMinutes);

    private string IdOf(int element) => View.IsolationValves.Keys.Concat(View.WaterSupplies.Keys).First(i => pipes.ElementOf(i) == element);
}
