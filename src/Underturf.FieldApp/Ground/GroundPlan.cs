using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>What the map shows of a property, in local metres, and what it cannot show because nobody noted where it is.</summary>
/// <param name="Features">What lies below first: the ground, pipes, cables, then what was found in it.</param>
public sealed record GroundPlan(IReadOnlyList<GroundFeature> Features, IReadOnlyList<UnplacedThing> Unplaced)
{
    /// <summary>Corners of a ring that looks round.</summary>
    private const int RingCorners = 48;

    /// <summary>Protected ground of trees, over the surface and under what is buried: it is seen and cannot be tapped.</summary>
    public IReadOnlyList<GroundFeature> Roots { get; init; } = [];

    /// <summary>With the places that only ties give, as sure as the ties are.</summary>
    public static GroundPlan Of(TiedPlaces tied)
    {
        var plan = Of(tied.View);
        return plan with { Features = [.. plan.Features.Select(thing => tied.Only(thing.Id) is { } place ? thing with { Grade = place.Grade } : thing)] };
    }

    public static GroundPlan Of(PropertyView view)
    {
        var things = Things(view).ToList();
        var placed = things.Where(t => view.PositionOf(t.Id) is not null)
            .Select(t => new GroundFeature(t.Id, t.Kind, t.Grade, t.Name, GroundForm.Point, [view.PositionOf(t.Id)!.Value]));
        return new GroundPlan(
            [.. view.Ground.Select(Surface)
                .Concat(view.Pipes.Select(p => Run(view, p.Key, GroundWords.Pipe, p.Value.Sure, p.Value.Route, p.Value.From, p.Value.To)).OfType<GroundFeature>())
                .Concat(view.Cables.Select(c => Run(view, c.Key, GroundWords.Cable, c.Value.Sure, c.Value.Route, c.Value.From, c.Value.To)).OfType<GroundFeature>())
                .Concat(placed)],
            [.. things.Where(t => view.PositionOf(t.Id) is null).Select(t => new UnplacedThing(t.Id, t.Kind, t.Name))])
        {
            Roots = [.. RootFinder.Of(view, PracticeBook.Default.Repairing.Roots).SelectMany(Rings)],
        };
    }

    public GroundFeature? Find(string? id) => Features.FirstOrDefault(f => f.Id == id);

    /// <summary>What to call it, wherever it stands.</summary>
    public string? NameOf(string? id) => Find(id)?.Name ?? Unplaced.FirstOrDefault(u => u.Id == id)?.Name;

    /// <summary>The box around what belongs together, as two corners; empty where nothing is placed. A slipped decimal point does not count.</summary>
    public IReadOnlyList<Position> Extent()
    {
        var all = Features.SelectMany(f => f.Shape).ToList();
        if (all.Count == 0)
        {
            return [];
        }

        var near = Near(all);
        return
        [
            new(near.Min(p => p.EastMetres), near.Min(p => p.NorthMetres)),
            new(near.Max(p => p.EastMetres), near.Max(p => p.NorthMetres)),
        ];
    }

    /// <summary>Those that belong together; all where none do.</summary>
    private static List<Position> Near(List<Position> all)
    {
        const double leastMetres = 10;
        var near = all.Where(Nearness.Of(all, leastMetres).Holds).ToList();
        return near.Count > 0 ? near : all;
    }

    /// <summary>Controllers, boxes, where water comes in and is shut off, and the valves that lie in no box: those in one are where the box is.</summary>
    private static IEnumerable<(string Id, string Kind, Grade Grade, string Name)> Things(PropertyView view)
    {
        var holding = view.Valves.Values.Select(v => v.Box).OfType<string>().Select(view.Identity.Of).ToHashSet(StringComparer.Ordinal);
        var masters = view.Controllers.Values.Select(c => c.Master).OfType<string>().Select(view.Identity.Of).ToHashSet(StringComparer.Ordinal);
        var boxes = view.Boxes.Select(b => (b.Key, holding.Contains(b.Key) ? GroundWords.BoxWithValves : GroundWords.Box, b.Value.Sure, view.Name(b.Key)));
        var valves = view.Valves
            .Where(v => v.Value.Position is not null || v.Value.Box is not { } box || !view.Knows(box))
            .Select(v => (v.Key, masters.Contains(v.Key) ? GroundWords.MasterValve : GroundWords.Valve, v.Value.Sure, view.Name(v.Key)));
        var isolations = view.IsolationValves.Select(i => (i.Key, GroundWords.IsolationValve, i.Value.Sure, view.Name(i.Key)));
        return valves.Concat(boxes).Concat(isolations).OrderBy(t => t.Item4, NaturalOrder.Instance)
            .Concat(view.WaterSupplies.Select(s => (s.Key, GroundWords.PointOfConnection, s.Value.Sure, view.Name(s.Key))))
            .Concat(view.Controllers.Select(c => (c.Key, GroundWords.Controller, c.Value.Sure, view.Name(c.Key))));
    }

    /// <summary>By the local rule, from the diameter of the trunk: inferred.</summary>
    private static IEnumerable<GroundFeature> Rings(TreeGround tree) => tree.Trunk.Points.Select(trunk => new GroundFeature(
        tree.Id,
        GroundWords.Roots,
        Grade.Inferred,
        "",
        GroundForm.Outline,
        [
            .. Enumerable.Range(0, RingCorners).Select(i => Math.Tau * i / RingCorners)
                .Select(turn => new Position(trunk.EastMetres + (tree.RadiusMetres * Math.Cos(turn)), trunk.NorthMetres + (tree.RadiusMetres * Math.Sin(turn)))),
        ]));

    private static GroundFeature Surface(KeyValuePair<string, GroundFact> thing)
    {
        var (fact, kind) = (thing.Value, GroundWords.Surface(thing.Value.What));
        var form = fact.Shape.Count == 1 ? GroundForm.Point : GroundShape.Of(fact).Closed ? GroundForm.Outline : GroundForm.Line;
        return new GroundFeature(thing.Key, kind, fact.Sure, fact.Label ?? kind, form, fact.Shape);
    }

    /// <summary>A cable or a pipe that was traced is drawn as it runs; where only its ends are known a straight line is inferred at best.</summary>
    private static GroundFeature? Run(PropertyView view, string id, string kind, Grade sure, IReadOnlyList<Position> route, string from, string to)
    {
        if (route.Count > 1)
        {
            return new GroundFeature(id, kind, sure, view.Name(id), GroundForm.Line, route);
        }

        var grade = sure == Grade.Measured ? Grade.Inferred : sure;
        return view.PositionOf(from) is { } start && view.PositionOf(to) is { } end && start != end
            ? new GroundFeature(id, kind, grade, view.Name(id), GroundForm.Line, [start, end])
            : null;
    }
}
