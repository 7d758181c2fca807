using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Location;

/// <summary>What lies hidden: what was noted as sought, valves and boxes that are only told of, the valves that stations lack, and faults that the diagnosis puts into the ground.</summary>
internal sealed class SoughtFinder(PropertyHistory history, PropertyView view, PracticeBook practice, IReadOnlyList<OpenQuestion> questions)
{
    private const string Box = "box";

    private readonly LocatingPractice book = practice.Locating;
    private readonly OwnGroundFinder own = new(history, view, practice);

    /// <summary>What a station lacks.</summary>
    private string Valve => book.Things[0];

    public IReadOnlyList<SoughtGroup> Find()
    {
        var things = Noted().Concat(ToldValves()).Concat(ToldBoxes()).ToList();
        foreach (var station in view.Stations.Keys.Order(StringComparer.Ordinal))
        {
            things.AddRange(Lacking(station, things.Count(t => t.Station == station && t.What == Valve)));
        }

        things.AddRange(new InferredFaults(view, practice, questions).Find().Where(fault => !IsFound(fault.Id)));
        return
        [
            .. things
                .GroupBy(t => t.Station is null ? t.Id : $"{t.Station}, {t.What}")
                .Select(g => new SoughtGroup(g.First().Station is { } s ? $"{g.First().What} of {view.Name(s)}" : g.First().Name, [.. g]))
                .OrderBy(g => g.Name, NaturalOrder.Instance),
        ];
    }

    /// <summary>Kinds of thing that notes seek and the practice book does not know.</summary>
    public IEnumerable<Problem> Problems() =>
        from note in history.Facts.Sought
        where !book.Things.Contains(note.Fact.What)
        select new Problem($"entry '{note.Entry}', field 'what'", $"seeks a {Problem.Quote(note.Fact.What)}, which the practice book does not know; it is not looked for", $"Use one of: {string.Join(", ", book.Things)}");

    private IEnumerable<Sought> Noted() =>
        from sought in view.Sought
        where book.Things.Contains(sought.Value.What) && sought.Value.What != HiddenName.Fault && !IsFound(sought.Key)
        let station = Known(sought.Value.Station)
        select new Sought(sought.Key, sought.Value.What, view.Name(sought.Key), station, own.Of(station, cable: sought.Value.Cable), book.None);

    /// <summary>Somebody said that it exists and nobody has seen it.</summary>
    private IEnumerable<Sought> ToldValves() =>
        from valve in view.Valves
        where valve.Value.Sure != Grade.Measured && valve.Value.Box is null && !IsFound(valve.Key) && !view.Sought.ContainsKey(valve.Key)
        let station = Known(valve.Value.Station)
        select new Sought(valve.Key, Valve, view.Name(valve.Key), station, own.Of(station, valve.Value.Waters), book.None);

    private IEnumerable<Sought> ToldBoxes() =>
        from box in view.Boxes
        where box.Value.Sure != Grade.Measured && !IsFound(box.Key) && !view.Sought.ContainsKey(box.Key) && book.Things.Contains(Box)
        select new Sought(box.Key, Box, view.Name(box.Key), null, OwnGround.None, book.None);

    /// <summary>A station has a valve for each place that it waters, or one; whether there are further ones is less sure.</summary>
    private IEnumerable<Sought> Lacking(string station, int sought)
    {
        var found = view.ValvesOf(station).Where(v => v.Valve.Sure == Grade.Measured || v.Valve.Box is not null || IsFound(v.Id)).ToList();
        var places = own.Places(station);
        var open = places.Where(p => found.All(v => v.Valve.Waters != p)).ToList();
        var lacks = Math.Max(0, Math.Max(1, places.Count) - found.Count - sought);
        for (var i = 0; i < lacks; i++)
        {
            var place = places.Count > 1 && lacks == open.Count ? open[i] : null;
            yield return new Sought(
                $"{station}/{Valve} {i + 1}",
                Valve,
                $"{Valve} of {view.Name(station)}{(place is null ? string.Empty : $", {place}")}",
                station,
                own.Of(station, place),
                i + found.Count + sought == 0 ? book.None : book.FurtherNone);
        }
    }

    /// <summary>It has a position, a search found it, or a question about it was closed.</summary>
    private bool IsFound(string id) =>
        view.PositionOf(id) is not null
        || history.Facts.Searches.Any(s => s.Fact.Found.Any(f => view.Identity.Of(f) == id))
        || history.Facts.QuestionsOpened.Any(q => q.Fact.About is { } about && view.Identity.Of(about) == id && history.Facts.QuestionsClosed.Any(c => c.Fact.Id == q.Fact.Id));

    private string? Known(string? id) => id is not null && view.Stations.ContainsKey(view.Identity.Of(id)) ? view.Identity.Of(id) : null;
}
