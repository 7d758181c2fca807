using Underturf.Planning.Rework;
using Underturf.Property;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Planning.Repair;

/// <summary>The way in: a notebook and a thing, a repair out. Nothing is kept: after each step that is noted the plan is made anew.</summary>
public static class RepairPlan
{
    /// <summary>Places named in a message at most.</summary>
    private const int MostNamed = 12;

    /// <param name="thing">Label or id of a valve or box, or of a station with one valve.</param>
    /// <param name="answers">What belief says, where it was worked out before.</param>
    public static Outcome<RepairAnswer> Of(Notebook notebook, string thing, Answers? answers = null)
    {
        var found = Find(notebook.History.Now, thing);
        return found.Succeeded ? Thin(notebook, found.Value) : found.Problem!;
    }

    /// <summary>All that belief says wants repair, what saves most loss for its minutes first.</summary>
    public static RepairListAnswer All(Notebook notebook, Answers? answers = null) => new(Notebook.Engine, notebook.Book.Version, notebook.Book.Rework.Money, []);

    private static RepairAnswer Thin(Notebook notebook, string id)
    {
        var (view, book) = (notebook.History.Now, notebook.Book);
        var isBox = view.Boxes.ContainsKey(id);
        var sheet = new CostSheet([CostLine.Of("repair it", book.Repairing.RebuildMinutes.Likely, book.Rework.HourPrice)]);
        var option = new RepairOption(isBox ? RepairKind.Box : RepairKind.Rebuild, "rebuild it", sheet, 0, 0, 1, sheet.Price, string.Empty, true, null, []);
        return new RepairAnswer(
            Notebook.Engine, book.Version, book.Rework.Money, id, view.Name(id), isBox ? RepairThing.Box : RepairThing.Valve, view.Name(id), id, [], null, [], [option], [], null, null, [], [], null,
            new Estimate(decimal.Round(sheet.Minutes / 60, 2), sheet.Work, sheet.Parts, 0, sheet.Price), [], [], []);
    }

    internal static Outcome<string> Find(PropertyView view, string name)
    {
        var wanted = view.Identity.Of(name.Trim());
        string[] known = [.. view.Valves.Keys, .. view.Boxes.Keys];
        if (known.Contains(wanted))
        {
            return wanted;
        }

        var stations = view.Stations.Keys.Where(s => s == wanted || view.StationNumber(s) == name.Trim() || Called(view, s, name)).SelectMany(s => view.ValvesOf(s).Select(v => v.Id));
        return known.Where(k => Called(view, k, name)).Concat(stations).Distinct().ToList() switch
        {
            [var only] => only,
            [] => new Problem($"thing {Problem.Quote(name)}", "is no valve or box that is noted", $"Name one of: {string.Join(", ", known.Take(MostNamed).Select(view.Name))}"),
            var many => new Problem($"thing {Problem.Quote(name)}", $"is the name of {many.Count} things", $"Name one by its id: {string.Join(", ", many.Take(MostNamed))}"),
        };
    }

    private static bool Called(PropertyView view, string id, string name) => string.Equals(view.Name(id), name.Trim(), StringComparison.OrdinalIgnoreCase);
}
