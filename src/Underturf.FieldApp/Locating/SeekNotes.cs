using System.Globalization;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>Forms for what happened where something hidden is looked for, filled in as the plan of the search has it.</summary>
public sealed class SeekNotes(HiddenName thing, SeekHand hand, SearchRoute? route, PropertyView view, LocatingPractice book)
{
    /// <summary>The stop that one is at; nothing where the map was tapped instead, or where there is no search.</summary>
    public SearchStep? Step => hand.Points.Count == 0 ? route?.Told.ElementAtOrDefault(hand.Stop) : null;

    public IReadOnlyList<Position> Where => hand.Points.Count > 0 ? [.. hand.Points] : Step?.At is { } at ? [PlacingDraft.Rounded(at)] : [];

    private IReadOnlyList<string> Spots => Step?.Spot is { } spot ? [spot] : [];

    /// <summary>True where it is known where one is.</summary>
    public bool HasPlace => Where.Count + Spots.Count > 0;

    /// <summary>Where one is, in words.</summary>
    public string Said => Step is { } step ? $"stop {hand.Stop + 1}, {step.Where}"
        : hand.Points.Count > 1 ? $"a path of {hand.Points.Count} points"
        : hand.Points.Count == 1 ? "the place tapped"
        : "";

    /// <summary>Searched in vain, with the minutes of the plan.</summary>
    public NoteDraft Nothing() => Draft(NoteKind.Search, minutes: book.Searching.Where(w => w.Owned).ToDictionary(w => w.Name, Planned, StringComparer.Ordinal));

    public NoteDraft Sign(string how = "") => Draft(NoteKind.Sign, way: how);

    public NoteDraft Trace(string ended) => Draft(NoteKind.Trace, way: book.Tracing.First(w => w.Owned).Name, ended: ended);

    /// <summary>The form that gives what was found its place; nothing for what has no symbol on the plan, or where there is no plan.</summary>
    public PlacingDraft? Placing()
    {
        if (Where.Count == 0 || thing.What is not (GroundWords.Valve or GroundWords.Box))
        {
            return null;
        }

        var isNoted = view.Sought.ContainsKey(thing.Id) || view.IsPlace(thing.Id);
        var draft = new PlacingDraft { Thing = isNoted ? thing.Id : null, Kind = thing.What, Sought = thing.Name, Station = thing.Station, Grade = Grade.Measured };
        draft.Take(Where[^1]);
        if (!isNoted)
        {
            draft.Choose(thing.What, view);
        }

        return draft;
    }

    /// <summary>What was found without a place on the plan: the valve of a station, or a search that found it.</summary>
    public IReadOnlyList<Func<string, Fact>> Found() => thing is { Station: not null, What: GroundWords.Valve } && Where.Count == 0
        ? [newId => new ValveFact { Id = newId, Station = thing.Station, Sure = Grade.Measured, Note = Step?.Where }]
        : [.. First.Select(fact => (Func<string, Fact>)(_ => fact)), _ => new SearchFact { How = Way, About = thing.About, Where = [.. Where.TakeLast(1)], Spots = Spots, Found = [thing.Id] }];

    /// <summary>What the diagnosis infers is noted as sought once something is noted of it, so that notes can name it.</summary>
    private IReadOnlyList<SoughtFact> First => thing.What == HiddenName.Fault && !view.Sought.ContainsKey(thing.Id) ? [new SoughtFact { Id = thing.Id, What = thing.What, Label = thing.Name }] : [];

    private string Way => Step?.Efforts is [.., var last] ? last.How : book.Searching.First(w => w.Owned).Name;

    private NoteDraft Draft(NoteKind kind, string way = "", string ended = "", Dictionary<string, string>? minutes = null) => new()
    {
        Kind = kind,
        Sought = new SeekNote { Begins = First.Select(fact => fact.Label).FirstOrDefault(), About = thing.About, Where = Where, Spots = Spots, WithinMetres = Within, Said = Said, Way = way, Ended = ended, Minutes = minutes ?? [] },
    };

    /// <summary>A disc as large as the ground of the stop.</summary>
    private double? Within => Step is { At: not null } step ? Math.Round(step.AcrossMetres / Math.Sqrt(Math.PI), 1) : null;

    /// <summary>Whole minutes; under one, tenths.</summary>
    private string Planned(SearchWay way) =>
        Step?.Efforts.Where(e => e.How == way.Name).Sum(e => e.Minutes) is >= 0.05 and var minutes ? Math.Round(minutes, minutes < 1 ? 1 : 0).ToString(CultureInfo.InvariantCulture) : "";
}
