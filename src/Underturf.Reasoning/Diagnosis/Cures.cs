using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Which suspects work done has cured, and since when. A reading taken before the work still speaks of the fault.</summary>
internal sealed class Cures(PropertyHistory history, PracticeBook book)
{
    /// <summary>Work on one station of a pair is work on the other, which the note does not name.</summary>
    private readonly HashSet<string> pairRepairs = [.. book.Faults.Where(f => f.Scope == FaultScope.Pair).Select(f => f.Repair)];

    private readonly WorkDone[] works = [.. history.Facts.Works.Select(w => WorkDone.Of(w, history.Now))];

    /// <summary>Whether any work was done at all.</summary>
    public bool HasAny => works.Length > 0;

    public bool IsCured(Suspect suspect, Moment moment)
    {
        if (suspect.Fault is not { Repair.Length: > 0 } fault)
        {
            return false;
        }

        foreach (var work in works)
        {
            if (work.Moment <= moment && work.Did == fault.Repair && work.Touches(suspect))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The last work on the station, on one of its things, or on what it shares with others.</summary>
    public Moment LastOn(StationPath path) => works.Where(w => w.Concerns(path)).Select(w => w.Moment).DefaultIfEmpty().Max();

    /// <summary>How often work was done up to a moment that may have changed what the station shows.</summary>
    public int CountOn(StationPath path, Moment moment) => works.Count(w => w.Moment <= moment && (w.Concerns(path) || pairRepairs.Contains(w.Did)));

    /// <param name="Thing">What was worked on, where the note names it.</param>
    /// <param name="Station">The station that it is or belongs to.</param>
    /// <param name="Place">Where, as the note says or as the thing lies.</param>
    private sealed record WorkDone(Moment Moment, string Did, string? Thing, string? Station, string? Place)
    {
        public static WorkDone Of(Observed<WorkFact> work, PropertyView view)
        {
            var thing = work.Fact.Target is { } target ? view.Identity.Of(target) : null;
            var valve = thing is null ? null : view.Coils.TryGetValue(thing, out var coil) ? view.Identity.Of(coil.Valve) : thing;
            var known = valve is null ? null : view.Valves.GetValueOrDefault(valve);
            var end = thing is null ? null : view.Ends.GetValueOrDefault(thing);
            var station = known is not null ? known.Station : end is not null ? end.Station : thing;
            var place = work.Fact.Place ?? known?.Box ?? end?.Place ?? (thing is null ? null : view.Splices.GetValueOrDefault(thing)?.Place);
            return new WorkDone(
                work.Moment,
                work.Fact.Did,
                thing,
                station is null ? null : view.Identity.Of(station),
                place is null ? null : view.Identity.Of(place));
        }

        /// <summary>Work on the station, or on no station at a place or cable on its way.</summary>
        public bool Concerns(StationPath path) => Station == path.Station
            || (Thing is null && Place is not null && (Place == path.Controller || path.LegTo(Place) >= 0))
            || (Thing is not null && (Thing == path.Controller || path.LegTo(Thing) >= 0 || path.Legs.Any(l => l.Id == Thing)));

        /// <summary>
        /// Work at the suspect's place, or on its station, cable or valve; work that names neither touches nothing, because it cannot be
        /// told what it cured. A fault that nobody can say the place of, such as a valve somewhere that does not close, is cured by its repair
        /// wherever that was noted.
        /// </summary>
        public bool Touches(Suspect suspect)
        {
            var sameThing = Thing is not null && (Thing == suspect.Leg?.Id || Thing == suspect.Place)
                || (Station is not null && (Station == suspect.Station || Station == suspect.Other));
            return Place is not null && suspect.Place is not null
                ? Place == suspect.Place && (Thing is null || sameThing || suspect.IsShared)
                : sameThing || IsNowhere(suspect);
        }

        private static bool IsNowhere(Suspect suspect) => suspect is { Station: null, Leg: null, Place: null, Note: null };
    }
}
