using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Water;

namespace Underturf.FieldApp;

/// <summary>What is known of a thing, as its card says it.</summary>
/// <param name="Facts">Each with what it is, and what the log says.</param>
/// <param name="Notes">The newest notes about it, newest first.</param>
/// <param name="TakesNotes">True for a place at which a reading or a look can be noted.</param>
public sealed record ThingKnown(IReadOnlyList<(string What, string Said)> Facts, IReadOnlyList<(string At, string Words)> Notes, bool TakesNotes)
{
    private const int MostNotes = 5;

    public static ThingKnown Of(string id, PropertyHistory history)
    {
        var view = history.Now;
        var said = view.Boxes.TryGetValue(id, out var box) ? Box(id, box, view)
            : view.Valves.TryGetValue(id, out var valve) ? Valve(id, valve, history)
            : view.Controllers.TryGetValue(id, out var controller) ? Controller(id, controller, view)
            : view.Cables.TryGetValue(id, out var cable) ? Cable(cable, view)
            : WaterKnown.Of(id, view, history.Facts.UsesUsUnits) is { } water ? water
            : view.Ground.TryGetValue(id, out var ground) ? Surface(id, ground, history)
            : [];
        return new ThingKnown(
            [.. said.Where(fact => !string.IsNullOrEmpty(fact.Said)).Select(fact => (fact.What, fact.Said!))],
            [.. NotesAbout(id, history)],
            view.IsPlace(id) || view.IsolationValves.ContainsKey(id) || view.WaterSupplies.ContainsKey(id));
    }

    private static (string What, string? Said)[] Box(string id, BoxFact box, PropertyView view) =>
    [
        ("size", box.Size),
        ("holds", Names(view.Valves.Where(v => v.Value.Box is { } holder && view.Identity.Of(holder) == id).Select(v => Held(v.Key, v.Value, view)))),
        ("wire ends", Count(view.Ends.Values.Count(end => view.Identity.Of(end.Place) == id))),
        ("cables to", Names(Neighbours(id, view))),
        ("note", box.Note),
    ];

    private static (string What, string? Said)[] Valve(string id, ValveFact valve, PropertyHistory history)
    {
        var view = history.Now;
        return
        [
            ("in", valve.Box is { } box ? view.Name(box) : null),
            ("station", valve.Station is { } station ? view.StationNumber(station) : null),
            ("waters", valve.Waters),
            ("height", WaterKnown.Height(valve.Elevation, history.Facts.UsesUsUnits)),
            .. Drained(id, valve, history),
            ("body", valve.Body),
            ("make", valve.Make),
            ("note", valve.Note),
        ];
    }

    /// <summary>What runs out at the low end of its lateral, where heights are noted.</summary>
    private static IEnumerable<(string What, string? Said)> Drained(string id, ValveFact valve, PropertyHistory history)
    {
        var (name, say) = (history.Now.Name(id), new WaterSay(history.Facts.UsesUsUnits));
        var laterals = valve.Station is { } station ? Draining.Of(history, PracticeBook.Default, history.Now.Identity.Of(station)) : [];
        return laterals.Where(l => l.Valve == name).SelectMany(l => new[] { ("low end", (string?)l.Say(say)), ("helps", l.Help(say)) });
    }

    private static (string What, string? Said)[] Controller(string id, ControllerFact controller, PropertyView view) =>
    [
        ("terminals", $"{controller.Terminals}, {view.Stations.Values.Count(s => view.Identity.Of(s.Controller) == id)} in use"),
        ("sensor", controller.Sensor),
        ("master valve", controller.Master is { } master ? view.Name(master) : null),
        ("cables to", Names(Neighbours(id, view))),
        ("note", controller.Note),
    ];

    private static (string What, string? Said)[] Cable(CableFact cable, PropertyView view) =>
    [
        ("from", view.Name(cable.From)),
        ("to", view.Name(cable.To)),
        ("carries", cable.Carries.Count == 0 ? null : $"stations {string.Join(", ", cable.Carries.Select(view.StationNumber))}"),
        ("way", cable.Route.Count > 1 ? "as traced" : "not traced: drawn straight"),
        ("note", cable.Note),
    ];

    private static (string What, string? Said)[] Surface(string id, GroundFact ground, PropertyHistory history)
    {
        var feet = history.Facts.UsesUsUnits;
        var roots = RootFinder.Of(history.Now, PracticeBook.Default.Repairing.Roots).FirstOrDefault(tree => tree.Id == id);
        return
        [
            ("trunk", ground.Trunk is { } trunk ? GroundWords.Distance(trunk.Metres, feet) : null),
            ("roots", roots is null ? null : $"protected {GroundWords.Distance(roots.RadiusMetres, feet)} round the trunk: dig by hand or with air"),
            ("note", ground.Note),
        ];
    }

    private static string Held(string id, ValveFact valve, PropertyView view) =>
        valve.Station is { } station && view.StationNumber(station) is var number && !view.Name(id).EndsWith($" {number}", StringComparison.Ordinal) ? $"{view.Name(id)} (station {number})" : view.Name(id);

    private static IEnumerable<string> Neighbours(string id, PropertyView view) => view.Cables.Values
        .Where(cable => view.Identity.Of(cable.From) == id || view.Identity.Of(cable.To) == id)
        .Select(cable => view.Name(view.Identity.Of(cable.From) == id ? cable.To : cable.From));

    private static IEnumerable<(string At, string Words)> NotesAbout(string id, PropertyHistory history)
    {
        var (facts, identity) = (history.Facts, history.Facts.Identity);
        bool At(string? place) => place is not null && identity.Of(place) == id;
        IEnumerable<(Moment Moment, Fact Fact)> notes =
        [
            .. facts.Readings.Where(r => At(r.Fact.Place)).Select(r => (r.Moment, (Fact)r.Fact)),
            .. facts.Looks.Where(l => At(l.Fact.Place)).Select(l => (l.Moment, (Fact)l.Fact)),
            .. facts.Works.Where(w => At(w.Fact.Place) || At(w.Fact.Target)).Select(w => (w.Moment, (Fact)w.Fact)),
            .. facts.Settings.Where(s => At(s.Fact.Of)).Select(s => (s.Moment, (Fact)s.Fact)),
            .. facts.LeftAs.Where(l => At(l.Fact.Place)).Select(l => (l.Moment, (Fact)l.Fact)),
            .. facts.Photos.Where(p => At(p.Fact.Place) || At(p.Fact.About)).Select(p => (p.Moment, (Fact)p.Fact)),
            .. facts.Told.Where(t => At(t.Fact.About)).Select(t => (t.Moment, (Fact)t.Fact)),
        ];
        return notes.OrderByDescending(note => note.Moment).Take(MostNotes)
            .Select(note => (note.Moment.At.ToString("yyyy-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture), NoteWords.Say(note.Fact, history.Now)));
    }

    private static string? Names(IEnumerable<string> names) => string.Join(", ", names.Order(NaturalOrder.Instance)) is { Length: > 0 } said ? said : null;

    private static string? Count(int number) => number == 0 ? null : $"{number} noted";
}
