using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Which suspects work done has cured, and since when. A reading taken before the work still speaks of the fault.</summary>
internal sealed class Cures(PropertyHistory history)
{
    private readonly IReadOnlyList<Observed<WorkFact>> works = history.Facts.Works;
    private readonly Identity identity = history.Facts.Identity;

    public bool IsCured(Suspect suspect, DateTimeOffset moment)
    {
        if (suspect.Fault is not { Repair.Length: > 0 } fault)
        {
            return false;
        }

        foreach (var work in works)
        {
            if (work.At <= moment && work.Fact.Did == fault.Repair && Touches(work.Fact, suspect))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// Work at the suspect's place, or on its station, cable or valve; work that names neither touches nothing, because it cannot be told
    /// what it cured.
    /// </summary>
    private bool Touches(WorkFact work, Suspect suspect)
    {
        var target = work.Target is { } t ? identity.Of(t) : null;
        var place = work.Place is { } p ? identity.Of(p) : null;
        var samePlace = place is not null && suspect.Place is not null && place == suspect.Place;
        var sameThing = target is not null && (target == suspect.Station || target == suspect.Other || target == suspect.Leg?.Id || target == suspect.Place);
        return place is not null && suspect.Place is not null
            ? samePlace && (target is null || sameThing || suspect.IsShared)
            : sameThing;
    }
}
