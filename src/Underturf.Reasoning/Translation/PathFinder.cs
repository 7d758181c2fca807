using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Translation;

/// <summary>
/// Finds the wires of each station in what was noted of cables and valves. Where nothing is known of a stretch it is assumed as one run
/// of unknown length, so that every station has a path.
/// </summary>
public sealed class PathFinder
{
    private readonly PropertyView view;
    private readonly PracticeBook book;
    private readonly WireSize usualStation;
    private readonly WireSize usualCommon;
    private readonly ILookup<string, Run> runs;
    private readonly ILookup<string, (string Id, ValveFact Fact)> valvesOf;
    private readonly Dictionary<string, double> notedOhms = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Dictionary<string, Step>> reached = new(StringComparer.Ordinal);

    public PathFinder(PropertyView view, PracticeBook book)
    {
        this.view = view;
        this.book = book;
        usualStation = WireSize.FromAwg(book.Wire.StationAwg);
        usualCommon = WireSize.FromAwg(book.Wire.CommonAwg);
        runs = view.Cables.Select(c => Run.Of(c.Key, c.Value, view)).SelectMany(r => new[] { (At: r.From, Run: r), (At: r.To, Run: r) }).ToLookup(e => e.At, e => e.Run, StringComparer.Ordinal);
        valvesOf = view.Valves.Where(v => v.Value.Station is not null).ToLookup(v => view.Identity.Of(v.Value.Station!), v => (v.Key, v.Value), StringComparer.Ordinal);
        foreach (var coil in view.Coils.Values)
        {
            notedOhms.TryAdd(view.Identity.Of(coil.Valve), coil.Ohms?.Ohms ?? 0);
        }
    }

    public IReadOnlyList<StationPath> All() => [.. view.Stations.Select(s => Of(s.Key, s.Value))];

    public StationPath Of(string id, StationFact station)
    {
        var common = string.IsNullOrWhiteSpace(station.Common) ? null : station.Common.Trim();
        return Path(id, view.Identity.Of(station.Controller), [.. valvesOf[id]]) with { Common = common };
    }

    /// <summary>The wires of a controller's master valve, on the usual common; nothing where none is noted, or one that is no valve and no place.</summary>
    public StationPath? MasterOf(string controller)
    {
        if (view.Controllers.GetValueOrDefault(controller)?.Master is not { } noted || (view.Knows(noted) && !view.IsPlace(noted)) || view.Identity.Of(noted) == controller)
        {
            return null;
        }

        var id = view.Identity.Of(noted);
        return Path(id, controller, [(id, view.Valves.GetValueOrDefault(id) ?? new ValveFact { Id = id })]);
    }

    private StationPath Path(string id, string controller, IReadOnlyList<(string Id, ValveFact Fact)> noted)
    {
        var own = Reach(controller, run => run.Carries.Contains(id));
        if (!reached.TryGetValue(controller, out var any))
        {
            any = Reach(controller, _ => true);
            reached[controller] = any;
        }

        var tree = new PathTree(controller);
        var valves = new List<ValveEnd>();
        foreach (var (valve, fact) in noted)
        {
            var place = fact.Box is { } box ? view.Identity.Of(box) : valve;
            valves.Add(new ValveEnd(valve, place, LegTo(tree, place, own, any), NotedOhms(valve), Coil(id, valves)));
        }

        if (valves.Count == 0)
        {
            var end = own.Count > 0 ? Farthest(own) : $"valve of station {view.StationNumber(id)}";
            valves.Add(new ValveEnd(null, end, LegTo(tree, end, own, any), null, Coil(id, valves)));
        }

        return new StationPath(id, controller, tree.Legs, valves, tree.Guessed);
    }

    /// <summary>A station's coils in the order in which they were noted: one that nobody had found is the same when it is found.</summary>
    private static string Coil(string station, List<ValveEnd> before) => $"{station} {before.Count}";

    private int LegTo(PathTree tree, string place, Dictionary<string, Step> own, Dictionary<string, Step> any)
    {
        var steps = own.ContainsKey(place) ? own : any;
        if (place == tree.Controller || !steps.ContainsKey(place))
        {
            return tree.Guess(place, at =>
            {
                var (metres, spread) = LegLength.Between(tree.Controller, place, view, book);
                return new Leg($"run to {place}", tree.Controller, place, metres, spread, usualStation, usualCommon, at, book.Wire.GaugeSpread);
            });
        }

        var chain = new Stack<Step>();
        for (var at = place; at != tree.Controller; at = steps[at].From)
        {
            chain.Push(steps[at]);
        }

        var parent = -1;
        foreach (var step in chain)
        {
            parent = tree.Extend(step.Cable, step.To, parent, (from, up) => LegOf(step, from, up));
        }

        return parent;
    }

    private Leg LegOf(Step step, string from, int parent)
    {
        var (metres, spread) = LegLength.Of(step.Fact, view, book);
        return new Leg(
            step.Cable,
            from,
            step.To,
            metres,
            spread,
            step.Fact.Gauge ?? usualStation,
            step.Fact.CommonGauge ?? step.Fact.Gauge ?? usualCommon,
            parent,
            step.Fact.Gauge is null ? book.Wire.GaugeSpread : 0);
    }

    /// <summary>Breadth first from the controller: for each place the cable by which it is reached with the fewest legs.</summary>
    private Dictionary<string, Step> Reach(string controller, Func<Run, bool> counts)
    {
        var steps = new Dictionary<string, Step>(StringComparer.Ordinal);
        var queue = new Queue<string>([controller]);
        while (queue.TryDequeue(out var at))
        {
            foreach (var run in runs[at].Where(counts))
            {
                var far = run.From == at ? run.To : run.From;
                if (far != controller && steps.TryAdd(far, new Step(run.Id, run.Fact, at, far)))
                {
                    queue.Enqueue(far);
                }
            }
        }

        return steps;
    }

    private static string Farthest(Dictionary<string, Step> own)
    {
        var starts = own.Values.Select(s => s.From).ToHashSet(StringComparer.Ordinal);
        return own.Keys.Last(place => !starts.Contains(place));
    }

    private double? NotedOhms(string valve) => notedOhms.GetValueOrDefault(valve) is > 0 and var ohms ? ohms : null;

    /// <summary>A cable between the things that its ends are known to be.</summary>
    private sealed record Run(string Id, CableFact Fact, string From, string To, IReadOnlySet<string> Carries)
    {
        public static Run Of(string id, CableFact cable, PropertyView view) => new(
            id,
            cable,
            view.Identity.Of(cable.From),
            view.Identity.Of(cable.To),
            cable.Carries.Select(view.Identity.Of).ToHashSet(StringComparer.Ordinal));
    }

    private sealed record Step(string Cable, CableFact Fact, string From, string To);
}
