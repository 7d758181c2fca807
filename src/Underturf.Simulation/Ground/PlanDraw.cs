using Underturf.FieldLog;
using Underturf.Numerics;

namespace Underturf.Simulation;

/// <summary>Draws how a property was built: ground, boxes along mains, phases, runs, stations.</summary>
internal sealed class PlanDraw(WorldShape shape, int stations, SeededGenerator chance, TrueNumbers numbers)
{
    private const double MetresBetweenBoxes = 35;
    private const int StationsForTwoControllers = 120;

    public PropertyPlan Draw()
    {
        var boxes = Math.Max(4, stations / 3);
        var terrain = new Terrain(chance.Fork("terrain"), stations < StationsForTwoControllers ? 1 : 2, MetresBetweenBoxes * Math.Sqrt(boxes), boxes);
        var phases = Phase.Draw(chance.Fork("phases"), numbers, stations);
        var placed = Bury(Boxes(terrain, new BoxPlacement(terrain, chance.Fork("boxes")).Draw(boxes), phases.Count));
        var drawn = Stations(placed);
        return new PropertyPlan(terrain, phases, placed, drawn, Runs(placed, phases, terrain));
    }

    /// <summary>Each belongs to its nearest controller and hangs on the nearest box, or controller, that is nearer to it, as wires lie along mains.</summary>
    private List<PlannedBox> Boxes(Terrain terrain, IReadOnlyList<Position> places, int phases)
    {
        var centres = PhaseCentres(terrain, phases);
        var boxes = new List<PlannedBox>();
        foreach (var at in places.OrderBy(p => terrain.Controllers.Min(p.DistanceMetresTo)))
        {
            var controller = Nearest(terrain.Controllers, at);
            var parent = Enumerable.Range(-1, boxes.Count + 1)
                .Where(p => p < 0 || boxes[p].Controller == controller)
                .MinBy(p => at.DistanceMetresTo(p < 0 ? terrain.Controllers[controller] : boxes[p].At));
            boxes.Add(new PlannedBox($"b{boxes.Count}", at, parent, controller, Nearest(centres, at), false));
        }

        return boxes;
    }

    /// <summary>The oldest phase begins at the first controller.</summary>
    private List<Position> PhaseCentres(Terrain terrain, int phases)
    {
        var random = chance.Fork("phase centres");
        return [.. Enumerable.Range(0, phases)
            .Select(_ => new Position(random.NextDouble() * terrain.WideMetres, random.NextDouble() * terrain.WideMetres))
            .OrderBy(p => p.DistanceMetresTo(terrain.Controllers[0]))];
    }

    private List<PlannedBox> Bury(List<PlannedBox> boxes)
    {
        var random = chance.Fork("buried");
        return [.. boxes.Select(b => b with { Buried = b.Parent >= 0 && random.Happens(shape.BuriedShare) })];
    }

    /// <summary>Stations end in boxes, several in some, and are wired to terminals phase after phase.</summary>
    private List<PlannedStation> Stations(List<PlannedBox> boxes)
    {
        var random = chance.Fork("stations");
        var ends = Enumerable.Range(0, stations).Select(_ => random.NextInt(boxes.Count))
            .OrderBy(b => boxes[b].Controller).ThenBy(b => boxes[b].Phase).ThenBy(_ => random.NextUInt64()).ToList();
        var first = Enumerable.Range(0, 2).Select(c => ends.FindIndex(b => boxes[b].Controller == c)).ToArray();
        return [.. ends.Select((b, i) => new PlannedStation($"s{i + 1}", i - first[boxes[b].Controller] + 1, b, boxes[b].Phase))];
    }

    /// <summary>Every phase's wires run in the trench from a box to its parent.</summary>
    private Dictionary<(int Box, int Phase), PlannedRun> Runs(List<PlannedBox> boxes, IReadOnlyList<Phase> phases, Terrain terrain)
    {
        var random = chance.Fork("runs");
        var runs = new Dictionary<(int, int), PlannedRun>();
        for (var b = 0; b < boxes.Count; b++)
        {
            var from = boxes[b].Parent < 0 ? terrain.Controllers[boxes[b].Controller] : boxes[boxes[b].Parent].At;
            var metres = 2 + (random.Between(1.05, 1.4) * boxes[b].At.DistanceMetresTo(from));
            for (var p = 0; p < phases.Count; p++)
            {
                double? changes = random.Happens(shape.OtherGaugeShare) ? random.Between(0.2, 0.8) : null;
                runs[(b, p)] = new PlannedRun(metres, phases[p].StationAwg, changes, random.Pick<int>([14, 16, 18, 20]));
            }
        }

        return runs;
    }

    private static int Nearest(IReadOnlyList<Position> places, Position at) => Enumerable.Range(0, places.Count).MinBy(i => places[i].DistanceMetresTo(at));
}
