using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Turns the notes of the log into evidence; what cannot be used is named.</summary>
internal sealed class EvidenceFinder(Case owner)
{
    private readonly List<Problem> problems = [];

    public IReadOnlyList<Problem> Problems => problems;

    public IReadOnlyList<Evidence> Find()
    {
        var facts = owner.History.Facts;
        var readings = Befriended([.. facts.Readings.Select(Reading).OfType<ReadingEvidence>()]);
        var runs = facts.Tests.Select(t => Run(t.Fact.Station, t.Fact.Watered, t.Fact.Behaved, t.Moment));
        var looks = facts.Looks.Select(Look);
        return [.. readings.Concat<Evidence?>(runs).Concat(ToldToWater()).Concat(looks).OfType<Evidence>()];
    }

    /// <summary>Each told which others were taken in its way at its controller.</summary>
    private List<ReadingEvidence> Befriended(List<ReadingEvidence> readings)
    {
        foreach (var alike in readings.GroupBy(r => (r.Measures, owner.Paths[r.Stations[0]].Controller)))
        {
            IReadOnlyList<ReadingEvidence> fellows = [.. alike];
            foreach (var reading in fellows)
            {
                reading.Fellows = fellows;
            }
        }

        return readings;
    }

    private ReadingEvidence? Reading(Observed<ReadingFact> note)
    {
        var fact = note.Fact;
        if (owner.Book.Probe(fact.How) is not { } probe)
        {
            return Unknown(note);
        }

        var stations = fact.Stations.Select(owner.View.Identity.Of).ToList();
        var instrument = owner.Book.Instrument(probe);
        var needed = probe.Measures switch { Measure.SupplyVolts => 0, Measure.BetweenStationsOhms => 2, _ => 1 };
        var place = fact.Place is { } p ? owner.View.Identity.Of(p) : null;
        if (Fault(note, probe, instrument, stations, needed, place) is { } problem)
        {
            problems.Add(problem);
            return null;
        }

        var supply = owner.Book.Supply;
        if (supply.IsUnsafe(fact.Value))
        {
            problems.Add(new Problem(note.Entry.ToString(), $"shows {fact.Value.Value!.Value.Text}: over {supply.TouchVolts:0} V mains may be on the wire", supply.TouchCaution.TrimEnd('.')));
        }

        return needed == 0 ? null : new ReadingEvidence(note.Moment, stations)
        {
            What = $"{probe.Name}, {Named(stations)}{(place is null || probe.At == Stand.Controller ? string.Empty : $", at {owner.View.Name(place)}")}",
            Observed = (fact.Value.Value?.Text ?? "over range") + (fact.Drifting ? ", drifting" : string.Empty),
            Shown = fact.Value,
            Drifting = fact.Drifting,
            Display = new Display(instrument, owner.Book, fact.Value),
            Benches = owner.Benches(note.Moment),
            Measures = probe.Measures,
            Caution = probe.Caution,
            Place = place,
            Book = owner.Book,
            MayBeApart = needed == 2 && owner.MayReturnApart(owner.Paths[stations[0]], owner.Paths[stations[1]]),
        };
    }

    private ReadingEvidence? Unknown(Observed<ReadingFact> note)
    {
        // Readings of water are weighed by themselves.
        if (owner.Book.Water.Probe(note.Fact.How) is null)
        {
            var known = owner.Book.Probes.Select(p => p.Name).Concat(owner.Book.Water.Probes.Select(p => p.Name));
            problems.Add(new Problem(note.Entry.ToString(), $"'{note.Fact.How}' is no way of reading that the practice book knows", $"Use one of: {string.Join(", ", known)}"));
        }

        return null;
    }

    private Problem? Fault(Observed<ReadingFact> note, ProbePractice probe, InstrumentPractice instrument, List<string> stations, int needed, string? place)
    {
        var where = note.Entry.ToString();
        if (note.Fact.Value.Value is { } value && value.Dimension != instrument.Dimension)
        {
            return new Problem(where, $"'{value.Text}' is {Units.Name(value.Dimension)}, but {probe.Name} reads {Units.Name(instrument.Dimension)}", "Strike it and note it again with the right unit or the right way of reading");
        }

        if (stations.Count == needed && stations.Distinct().Count() != needed)
        {
            return new Problem(where, $"{probe.Name} needs {needed} stations, the note names {owner.View.Name(stations[0])} twice", "Strike it and note it again with the other station");
        }

        if (stations.Count != needed)
        {
            return new Problem(where, $"{probe.Name} needs {needed} station(s), the note names {stations.Count}", "Strike it and note it again with its stations");
        }

        if (stations.FirstOrDefault(s => !owner.Paths.ContainsKey(s)) is { } unknown)
        {
            return new Problem(where, $"names station '{unknown}', which nobody has noted", "Note the station, or strike this and name the right one");
        }

        var path = needed > 0 ? owner.Benches(note.Moment).PathOrNull(stations[0]) : null;
        if (needed > 0 && path is null)
        {
            return new Problem(where, $"names station '{stations[0]}', which was not there at that time", "Correct the time of the note");
        }

        if (needed == 2 && owner.Paths[stations[0]].Controller != owner.Paths[stations[1]].Controller)
        {
            return new Problem(where, $"{probe.Name} was taken between two controllers", "Name two stations of one controller");
        }

        return probe.At == Stand.Box && (place is null || path!.LegTo(place) < 0)
            ? new Problem(where, $"{probe.Name} was taken at {(place is null ? "no place" : owner.View.Name(place))}, which is not on the noted wires of {Named(stations)}", "Note the cable that passes there, or name the place that was meant")
            : null;
    }

    private RunEvidence? Run(string station, IReadOnlyList<string> watered, string? behaved, Moment moment)
    {
        var id = owner.View.Identity.Of(station);
        if (!owner.View.Stations.TryGetValue(id, out var known) || owner.Benches(moment).PathOrNull(id) is null)
        {
            problems.Add(new Problem(moment.Entry.ToString(), $"names station '{station}', which nobody has noted", "Note the station, or strike this and name the right one"));
            return null;
        }

        var behaviour = BehaviourOf(behaved);
        if (behaved is not null && behaviour is null)
        {
            problems.Add(new Problem(moment.Entry.ToString(), $"'{behaved}' is no behaviour of a valve", "Write opens, chatters or stays shut"));
        }

        int? places = watered.Count > 0 || behaviour == Behaviour.StaysShut ? watered.Distinct(StringComparer.OrdinalIgnoreCase).Count() : null;
        bool? own = watered.Count > 0 && known.Waters.Count > 0 ? watered.Intersect(known.Waters, StringComparer.OrdinalIgnoreCase).Any() : null;
        var seen = watered.Count > 0 ? string.Join(" and ", watered) : places == 0 ? "nothing waters" : "places not counted";
        return new RunEvidence(moment, id)
        {
            What = $"run, {Named([id])}",
            Observed = behaved is null ? seen : $"{behaved}, {seen}",
            Behaved = behaviour,
            Places = places,
            AtOwnPlace = own,
            Elsewhere = Elsewhere.Of(id, watered, owner.View),
            Benches = owner.Benches(moment),
            Book = owner.Book,
        };
    }

    /// <summary>A station noted to water several places was watched doing so by whoever noted it.</summary>
    private IEnumerable<RunEvidence?> ToldToWater()
    {
        var facts = owner.History.Facts;
        var tested = facts.Tests.Select(t => owner.View.Identity.Of(t.Fact.Station)).ToHashSet(StringComparer.Ordinal);
        return facts.Stations
            .Where(s => s.Fact.Waters.Count > 1 && !tested.Contains(owner.View.Identity.Of(s.Fact.Id)))
            .Select(s => Run(s.Fact.Id, s.Fact.Waters, null, s.Moment));
    }

    private LookEvidence? Look(Observed<LookFact> note)
    {
        var place = owner.View.Identity.Of(note.Fact.Place);
        var passing = owner.Paths.Values.Where(p => p.LegTo(place) >= 0).Select(p => p.Station);
        var stations = note.Fact.Stations.Count > 0 ? [.. note.Fact.Stations.Select(owner.View.Identity.Of)] : passing.ToList();
        return new LookEvidence(note.Moment, stations)
        {
            What = $"look into {owner.View.Name(place)}",
            Observed = note.Fact.Found.Count > 0 ? string.Join(", ", note.Fact.Found) : "nothing odd",
            Place = place,
            Found = note.Fact.Found,
            NamesStations = note.Fact.Stations.Count > 0,
            Book = owner.Book,
        };
    }

    private string Named(IEnumerable<string> stations) => string.Join(" and ", stations.Select(owner.View.Name));

    private static Behaviour? BehaviourOf(string? text) => text?.Trim().ToLowerInvariant() switch
    {
        "opens" => Behaviour.Opens,
        "chatters" => Behaviour.Chatters,
        "stays shut" => Behaviour.StaysShut,
        _ => null,
    };
}
