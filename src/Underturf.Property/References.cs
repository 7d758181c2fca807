using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Property;

/// <summary>Notes that name things nobody has noted.</summary>
public static class References
{
    public static IEnumerable<Problem> Problems(PropertyHistory history)
    {
        var (facts, view) = (history.Facts, history.Now);
        return Missing(facts.Stations, s => [s.Controller], view, "controller")
            .Concat(Missing(facts.Controllers, c => [c.Master], view, "valve or place"))
            .Concat(Missing(facts.Valves, v => [v.Box, v.Station], view, "box or station"))
            .Concat(Missing(facts.Coils, c => [c.Valve], view, "valve"))
            .Concat(Missing(facts.Ends, e => [e.Place, e.FarEnd, e.Station, e.Cable, .. e.Mates], view, "place, end or station"))
            .Concat(Missing(facts.Splices, s => [s.Place, .. s.Joins], view, "place or end"))
            .Concat(Missing(facts.Cables, c => [c.From, c.To, .. c.Carries], view, "place or station"))
            .Concat(Missing(facts.Looks, l => [l.Place, .. l.Stations], view, "place or station"))
            .Concat(Missing(facts.Readings, r => [r.Place], view, "place"))
            .Concat(Missing(facts.Touches, t => [t.Place, t.Against, .. t.Put, .. t.Touched, .. t.Answered], view, "place, station or end"))
            .Concat(Missing(facts.Resistors, r => [r.End], view, "end"))
            .Concat(Missing(facts.Sought, s => [s.Station, s.Cable], view, "station or cable"))
            .Concat(Missing(facts.Traces, t => [.. t.Of, .. t.Spots], view, "station, sought thing or spot"))
            .Concat(Missing(facts.Signs, s => [s.About, s.From, .. s.Spots], view, "station, sought thing, place or spot"))
            .Concat(Missing(facts.Searches, s => [s.About, .. s.Spots, .. s.Found], view, "station, sought thing or spot"))
            .Concat(Missing(facts.Pipes, p => [p.From, p.To], view, "supply, fitting or valve"))
            .Concat(Missing(facts.IsolationValves, i => [i.Box, .. i.Shuts], view, "box, station or valve"))
            .Concat(Missing(facts.Outlets, o => [o.Station, o.Fitting], view, "station or fitting"))
            .Concat(Missing(facts.Settings, s => [s.Of], view, "isolation valve or valve"))
            .Concat(Missing(facts.Watches, w => [w.Station, w.About], view, "station"))
            .Concat(Missing(facts.Catches, c => [c.Station], view, "station"))
            .Concat(Missing(facts.Works, w => [w.Place, w.Target], view, "place or thing"))
            .Concat(Missing(facts.Steps, s => [s.Place, s.Target], view, "place or thing"))
            .Concat(Missing(facts.ReworkSteps, s => [s.Station, s.Place, s.Wire], view, "station, place or end"))
            .Concat(Missing(facts.Renumbered, r => [r.Station, r.From, r.Valve], view, "station or valve"))
            .Concat(Missing(facts.LeftAs, l => [l.Place, .. l.Stations], view, "place or station"))
            .Concat(Missing(facts.Tickets, t => t.Places, view, "place"))
            .Concat(Missing(facts.Approvals, a => [a.About], view, "place, station or thing"))
            .Concat(Missing(facts.Parts, p => [p.For], view, "place, station or thing"))
            .Concat(Missing(facts.Ties, t => [t.Thing, t.Mark], view, "thing or mark"))
            .Concat(Missing(facts.Photos, p => [p.Place, p.About], view, "place or thing"))
            .Concat(EndProblems.Of(history))
            .Concat(Holders(view))
            .Concat(SameThings.Problems(facts))
            .Concat(Loops(view))
            .Concat(Coils(view))
            .Concat(Supplies(view))
            .Concat(Zones(facts))
            .Concat(Masters(view))
            .Concat(Terminals(history));
    }

    private static IEnumerable<Problem> Holders(PropertyView view) =>
        from valve in view.Valves
        where valve.Value.Box is { } box && view.Knows(box) && !view.Boxes.ContainsKey(view.Identity.Of(box)) && !view.Controllers.ContainsKey(view.Identity.Of(box))
        select new Problem($"valve '{valve.Key}'", $"is said to sit in '{valve.Value.Box}', which is no box", "Note the box it sits in, or none");

    private static IEnumerable<Problem> Loops(PropertyView view) =>
        from cable in view.Cables
        where view.Identity.Of(cable.Value.From) == view.Identity.Of(cable.Value.To)
        select new Problem($"cable '{cable.Key}'", $"goes from '{cable.Value.From}' to itself", "Correct one of its ends");

    private static IEnumerable<Problem> Coils(PropertyView view) =>
        from coil in view.Coils
        where coil.Value.Ohms is { Ohms: <= 0 }
        select new Problem($"coil '{coil.Key}'", "is noted with no ohms; the practice book's usual ohms stand in", "Read it again, its leads freed, and note what the display shows");

    private static IEnumerable<Problem> Supplies(PropertyView view) =>
        view.Controllers.SelectMany(c => SupplyPlate.Problems(c.Key, c.Value));

    private static IEnumerable<Problem> Zones(Facts facts) =>
        facts.Property is { Zone: { } zone } && PropertyZone.Doubt(zone, "property, field 'zone'") is { } doubt ? [doubt] : [];

    private static IEnumerable<Problem> Masters(PropertyView view)
    {
        foreach (var (id, controller) in view.Controllers)
        {
            if (controller.Master is { } master && view.Knows(master) && !view.IsPlace(master))
            {
                yield return new Problem($"controller '{id}'", $"names '{master}' as its master valve, which is no valve and no place; no master valve is reckoned with", "Note the controller again with the id of the valve or of its box");
            }

            if (controller.Master is { } itself && view.Identity.Of(itself) == id)
            {
                yield return new Problem($"controller '{id}', field 'master'", "names the controller itself; no master valve is reckoned with", "Note the controller again with the id of the master valve or of its box");
            }
        }
    }

    private static IEnumerable<Problem> Missing<T>(IEnumerable<Observed<T>> notes, Func<T, IEnumerable<string?>> named, PropertyView view, string what)
        where T : Fact =>
        from note in notes
        from id in named(note.Fact).OfType<string>().Distinct()
        where !view.Knows(id)
        select new Problem(note.Entry.ToString(), $"names '{id}', which nobody has noted", $"Note the {what} '{id}', or strike this entry and name the right one");

    private static IEnumerable<Problem> Terminals(PropertyHistory history)
    {
        var view = history.Now;
        foreach (var (id, station) in view.Stations)
        {
            if (view.Controllers.TryGetValue(view.Identity.Of(station.Controller), out var controller) && (station.Terminal < 1 || station.Terminal > controller.Terminals))
            {
                yield return new Problem($"station '{id}'", $"sits on terminal {station.Terminal}, but the controller has 1 to {controller.Terminals}", "Correct the terminal, or the controller's number of terminals");
            }
        }

        foreach (var twice in view.Stations.GroupBy(s => (view.Identity.Of(s.Value.Controller), s.Value.Terminal)).Where(g => g.Count() > 1))
        {
            yield return new Problem($"stations {string.Join(", ", twice.Select(s => $"'{s.Key}'"))}", $"share terminal {twice.Key.Terminal}", "Say that they are the same (same-as), or correct one terminal");
        }
    }
}
