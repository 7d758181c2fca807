namespace Underturf.Papers;

/// <summary>All labels in the order of their weight: marked places first, then controller, boxes and valves, runs under suspicion, ground last.</summary>
internal static class PlanLabels
{
    public static IEnumerable<PlanLabel> Of(PlanContent content, PlanFrame frame, ILookup<string, string> suspects)
    {
        var things = content.Things.OrderBy(t => !suspects.Contains(t.Name)).ThenBy(t => t.Kind).Select(t => OfThing(t, frame, suspects));
        var runs = content.Runs.Where(r => suspects.Contains($"cable {r.Id}")).Select(r => OfRun(r, frame, suspects));
        var ground = content.Ground.Where(g => PlainText.Of(g.Label ?? string.Empty).Length > 0).Select(g =>
        {
            var (x, y) = GroundDrawing.Middle(g, frame);
            return new PlanLabel(x, y, 4, [(PlanLabel.Short(g.Label!), "ground")], g.Shape.Count > 2);
        });
        return [.. things, .. runs, .. ground];
    }

    private static PlanLabel OfThing(PlanThing thing, PlanFrame frame, ILookup<string, string> suspects)
    {
        var (x, y) = frame.At(thing.At);
        var suspect = suspects[thing.Name].ToList();
        List<(string, string)> lines = [(PlanLabel.Short(thing.Name), "name")];
        if (thing.Detail.Length > 0)
        {
            lines.Add((PlanLabel.Short(thing.Detail), "small"));
        }

        return new PlanLabel(x, y, Symbols.Radius + (suspect.Count > 0 ? 5 : 0), [.. lines, .. suspect.Select(s => (s, "pill"))]);
    }

    private static PlanLabel OfRun(PlanRun run, PlanFrame frame, ILookup<string, string> suspects)
    {
        var at = run.Line[run.Line.Count / 2];
        var before = run.Line[(run.Line.Count / 2) - 1];
        var (x, y) = frame.At(new FieldLog.Position((at.EastMetres + before.EastMetres) / 2, (at.NorthMetres + before.NorthMetres) / 2));
        return new PlanLabel(x, y, 4, [(PlanLabel.Short($"cable {run.Id}"), "name"), .. suspects[$"cable {run.Id}"].Select(s => (s, "pill"))]);
    }
}
