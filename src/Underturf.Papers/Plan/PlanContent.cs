using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>A run of wire or of pipe as a line on the plan.</summary>
internal sealed record PlanRun(string Id, IReadOnlyList<Position> Line, Grade Grade);

/// <summary>What can be drawn to scale, and by name what cannot.</summary>
/// <param name="Roots">Protected ground of trees.</param>
/// <param name="Tied">What ties place, those near the rest.</param>
/// <param name="NotDrawn">One sentence a reason: no position noted, or so far off that everything else would shrink to a dot.</param>
internal sealed record PlanContent(
    IReadOnlyList<PlanThing> Things,
    IReadOnlyList<PlanRun> Runs,
    IReadOnlyList<PlanRun> Pipes,
    IReadOnlyList<GroundFact> Ground,
    IReadOnlyList<TreeGround> Roots,
    IReadOnlyList<Tie> Ties,
    IReadOnlyList<TiedPlace> Tied,
    IReadOnlyList<string> NotDrawn)
{
    public IEnumerable<Position> Positions => Things.Select(t => t.At).Concat(Runs.Concat(Pipes).SelectMany(r => r.Line)).Concat(Ground.SelectMany(g => g.Shape)).Concat(Roots.SelectMany(RootDrawing.Reach));

    public static PlanContent Of(PaperMatter matter)
    {
        var view = matter.Tied.View;
        var all = Named(view).Select(t => matter.Tied.Only(t.Id) is { } tied ? t with { Grade = tied.Grade } : t).ToList();
        var near = Nearness.Of(all.Select(t => view.PositionOf(t.Id)).OfType<Position>().Concat(view.Ground.Values.SelectMany(g => g.Shape)));
        var things = all.Where(t => view.PositionOf(t.Id) is { } at && near.Holds(at)).Select(t => t with { At = view.PositionOf(t.Id)!.Value }).ToList();
        var ground = view.Ground.Values.Where(g => g.Shape.Count > 0 && g.Shape.All(near.Holds)).ToList();
        var runs = view.Cables.Select(c => Run(view, c.Key, c.Value.Route, (c.Value.From, c.Value.To), c.Value.Sure, near)).OfType<PlanRun>().ToList();
        var pipes = view.Pipes.Select(p => Run(view, p.Key, p.Value.Route, (p.Value.From, p.Value.To), p.Value.Sure, near)).OfType<PlanRun>().ToList();
        var unplaced = all.Where(t => view.PositionOf(t.Id) is null).Select(t => t.Name).Concat(view.Cables.Keys.Except(runs.Select(r => r.Id)).Concat(view.Pipes.Keys.Except(pipes.Select(r => r.Id))).Select(view.Name)).ToList();
        var far = all.Where(t => view.PositionOf(t.Id) is { } at && !near.Holds(at)).Select(t => t.Name)
            .Concat(view.Ground.Values.Where(g => !g.Shape.All(near.Holds)).Select(g => g.Label ?? g.Id)).ToList();
        var ties = Tie.All(matter.Notebook.History).Where(t => t.From is { } from && near.Holds(from)).ToList();
        var tied = matter.Tied.All.Where(t => t.Spots.Count > 0 && t.Spots.All(spot => near.Holds(spot.At))).ToList();
        return new PlanContent(things, runs, pipes, ground, [.. RootFinder.Of(view, matter.Notebook.Book.Repairing.Roots).Where(r => r.Trunk.Points.All(near.Holds))], ties, tied, [.. Said("Without a position", unplaced), .. Said("Too far off to draw", far)]);
    }

    private static IEnumerable<PlanThing> Named(PropertyView view)
    {
        var none = default(Position);
        var held = view.Valves.Where(v => v.Value.Box is not null).ToLookup(v => view.Identity.Of(v.Value.Box!), v => v.Value);
        return view.Controllers.Select(c => new PlanThing(c.Key, ThingKind.Controller, view.Name(c.Key), string.Empty, none, c.Value.Sure, false))
            .Concat(view.Boxes.Select(b => new PlanThing(b.Key, ThingKind.Box, view.Name(b.Key), Detail(view, held[b.Key]), none, b.Value.Sure, held[b.Key].Any())))
            .Concat(view.Valves.Where(v => v.Value.Position is not null || v.Value.Box is null).Select(v =>
                new PlanThing(v.Key, ThingKind.Valve, view.Name(v.Key), Detail(view, [v.Value]), none, v.Value.Sure, true)))
            .Concat(view.IsolationValves.Select(i => new PlanThing(i.Key, ThingKind.IsolationValve, view.Name(i.Key), string.Empty, none, i.Value.Sure, false)))
            .Concat(view.WaterSupplies.Select(s => new PlanThing(s.Key, ThingKind.PointOfConnection, view.Name(s.Key), string.Empty, none, s.Value.Sure, false)));
    }

    private static string Detail(PropertyView view, IEnumerable<ValveFact> valves)
    {
        var stations = NumberRuns.Of(valves.Select(v => v.Station).OfType<string>().Select(view.StationNumber));
        return stations.Count == 0 ? string.Empty : stations.Count == 1 && stations[0].All(char.IsAsciiDigit) ? $"station {stations[0]}" : $"stations {string.Join(", ", stations)}";
    }

    private static PlanRun? Run(PropertyView view, string id, IReadOnlyList<Position> route, (string From, string To) ends, Grade sure, Nearness near)
    {
        if (route.Count > 1 && route.All(near.Holds))
        {
            return new PlanRun(id, route, sure);
        }

        // Where wire or pipe really lies between its ends nobody traced: a straight line can be inferred at best.
        return view.PositionOf(ends.From) is { } from && view.PositionOf(ends.To) is { } to && near.Holds(from) && near.Holds(to)
            ? new PlanRun(id, [from, to], sure == Grade.Measured ? Grade.Inferred : sure)
            : null;
    }

    private static IEnumerable<string> Said(string reason, List<string> names) =>
        names.Count == 0 ? [] : [$"{reason}: {string.Join(", ", names.Take(12))}{(names.Count > 12 ? $" and {names.Count - 12} more" : string.Empty)}."];
}
