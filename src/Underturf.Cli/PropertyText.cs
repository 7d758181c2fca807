using System.Text;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Cli;

/// <summary>The property as text for a terminal: what is known with its grade, then what is missing.</summary>
internal static class PropertyText
{
    public static string Write(Notebook notebook)
    {
        var (history, view) = (notebook.History, notebook.History.Now);
        var stock = Stock.Of(history);
        var text = new StringBuilder();
        text.AppendLine(history.Facts.Title);
        text.AppendLine();
        if (view.Controllers.Count > 0)
        {
            text.AppendLine(ControllerText.Write(view));
            text.AppendLine();
        }

        text.AppendLine(TextTable.Of(["station", "terminal", "waters", "common", "valve", "grade"], view.Stations.OrderBy(s => s.Value.Terminal).Select(s => Row(view, s.Key, s.Value))));
        if (view.Cables.Count > 0)
        {
            text.AppendLine();
            text.AppendLine(Runs(view, history.Facts.UsesUsUnits));
        }

        Missing(text, stock, view);
        Unexplained(text, notebook);
        foreach (var left in stock.LeftAs)
        {
            text.AppendLine($"Left as: {view.Name(left.Fact.Place)}: {left.Fact.State}{(left.Fact.Told is { } told ? $" ({told} was told)" : string.Empty)}, {left.At:yyyy-MM-dd HH:mm}");
        }

        foreach (var told in history.Facts.Told)
        {
            text.AppendLine($"Told by {told.Fact.Who}: {told.Fact.Text}");
        }

        foreach (var tie in Tie.All(history))
        {
            text.AppendLine($"Tie: {view.Name(tie.Thing)} lies {tie.Words(history.Facts.UsesUsUnits)} from {view.Name(tie.Mark)} ({tie.Grade.ToString().ToLowerInvariant()})");
        }

        foreach (var photo in PhotoAlbum.Of(history).All)
        {
            text.AppendLine(Photo(photo, view));
        }

        return text.ToString().TrimEnd();
    }

    private static string Photo(Photo photo, PropertyView view) =>
        $"Photo of {(photo.Things.Count == 0 ? "no place named" : string.Join(", ", photo.Things.Select(view.Name).Order(NaturalOrder.Instance)))}{(photo.Fact.Caption is { } caption ? $": {caption}" : "")}, {photo.At:yyyy-MM-dd HH:mm}, {PhotoFile.NameOf(photo.Fact)}";

    private static string Runs(PropertyView view, bool usUnits) =>
        TextTable.Of(["run", "from", "to", "length", "wire", "carries", "grade"], view.Cables.OrderBy(c => c.Key, NaturalOrder.Instance).Select(c => Row(view, c.Key, c.Value, usUnits)));

    private static string[] Row(PropertyView view, string id, StationFact station)
    {
        var valves = view.ValvesOf(id).ToList();
        var where = valves.Count == 0 ? "not found" : string.Join(", ", valves.Select(v => view.Name(v.Valve.Box ?? v.Id)));
        var grade = valves.Count == 0 ? Grade.Unknown : valves.Max(v => v.Valve.Sure);
        return [view.StationNumber(id), station.Terminal.ToString(), string.Join(", ", station.Waters), station.Common ?? "usual", where, grade.ToString().ToLowerInvariant()];
    }

    private static string[] Row(PropertyView view, string id, CableFact cable, bool usUnits) =>
    [
        id, view.Name(cable.From), view.Name(cable.To), cable.Length is { } length ? Say.Length(length.Metres, usUnits) : "unknown",
        $"{cable.Gauge?.Say(usUnits) ?? "unknown"}, common {cable.CommonGauge?.Say(usUnits) ?? "unknown"}",
        cable.Carries.Count == 1 ? "1 station" : $"{cable.Carries.Count} stations", cable.Sure.ToString().ToLowerInvariant(),
    ];

    private static void Missing(StringBuilder text, Stock stock, PropertyView view)
    {
        text.AppendLine();
        text.AppendLine($"Terminals in use: {stock.InUse} of {stock.Terminals}. Valves found: {stock.ValvesFound}.");
        List(text, "Stations whose valve nobody has found", stock.StationsWithoutValve.Select(view.StationNumber));
        List(text, "Valves that no station is known to run", stock.ValvesWithoutStation.Select(view.Name));
        List(text, "Conductor ends without a mate", stock.EndsWithoutMate.Select(e => $"{view.Name(e)} ({view.Ends[e].Colour ?? "colour unknown"}, {view.Name(view.Ends[e].Place)})"));
        List(text, "Asked and not answered", stock.Asked.Select(q => q.Fact.Text));
    }

    private static void Unexplained(StringBuilder text, Notebook notebook) => List(
        text,
        "Readings without an explanation",
        notebook.Answer().Questions.Where(q => q.Unexplained).Select(q => q.Symptom));

    private static void List(StringBuilder text, string title, IEnumerable<string> items)
    {
        var all = items.Order(NaturalOrder.Instance).ToList();
        if (all.Count > 0)
        {
            text.AppendLine($"{title}: {string.Join("; ", all)}.");
        }
    }
}
