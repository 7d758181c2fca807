using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation.Trials;

/// <summary>
/// Which true faults a piece of work cures. The work has to be the fault's repair, on its station where the note names one, and at its place
/// where the repair has one. Work on no station cures all of its kind at the place, and work on a station what is shared there: who remakes a
/// splice sees the common beside it. Work on no station cures of what sits nowhere but in a valve only what is in the valve there.
/// </summary>
/// <param name="notedPaths">The wires as the log has them.</param>
internal sealed class Mending(TrueWiring truth, IReadOnlyDictionary<string, StationPath> notedPaths)
{
    /// <summary>Ids of the places that the noted wires pass.</summary>
    public IEnumerable<string> NotedPlaces => notedPaths.Values.SelectMany(p => p.Legs.Select(l => l.To)).Distinct();

    public IReadOnlyList<TrueFault> By(WorkFact work, IEnumerable<TrueFault> faults) => [.. faults.Where(f => Cures(work, f))];

    public bool Cures(WorkFact work, TrueFault fault)
    {
        var practice = truth.Practice(fault);
        var named = fault.Station is null || (work.Target is null ? fault.Place is not null || IsValve(work.Place, fault.Station) : work.Target == fault.Station || work.Target == fault.Other);
        if (!named)
        {
            return false;
        }

        var placed = truth.Book.Repair(practice.Repair)!.Placed;
        return practice.Repair == work.Did
            ? !placed || fault.Place is null || fault.Place == work.Place || IsHidden(work, fault)
            : placed && IsDugUp(work, practice) && IsHidden(work, fault);
    }

    private bool IsValve(string? place, string station) => place is not null && truth.Path(station).Valves[0].Place == place;

    /// <summary>Mending a stretch of conductor uncovers what splices are buried in it.</summary>
    private bool IsDugUp(WorkFact work, FaultPractice practice) => practice.Scope is FaultScope.Splice or FaultScope.CommonSplice
        && truth.Book.Faults.Any(f => f.Repair == work.Did && f.Scope is FaultScope.Conductor or FaultScope.CommonConductor);

    /// <summary>The fault sits in a place that nobody noted, on the stretch that ends at the place worked on, or beyond it where the noted wires end.</summary>
    private bool IsHidden(WorkFact work, TrueFault fault)
    {
        if (work.Place is null || fault.Place is null || notedPaths.Values.Any(p => p.LegTo(fault.Place) >= 0))
        {
            return false;
        }

        return notedPaths.Values
            .Where(p => fault.Station is null || p.Station == fault.Station || p.Station == fault.Other)
            .Any(noted => Hidden(noted, work.Place).Contains(fault.Place));
    }

    private IEnumerable<string> Hidden(StationPath noted, string place)
    {
        var path = truth.Path(noted.Station);
        var (stretch, ends) = (path.LegTo(place), noted.Valves[0].Place == place);
        var beyond = ends ? path.Legs.Select(l => l.To).Where(to => noted.LegTo(to) < 0 && !LeadsToNoted(path, noted, to)) : [];
        return (stretch < 0 ? [] : Before(path, noted, stretch)).Concat(beyond);
    }

    /// <summary>Places inward of a leg's end as far as the next one that was noted.</summary>
    private static IEnumerable<string> Before(StationPath path, StationPath noted, int leg)
    {
        for (var at = path.Legs[leg].Parent; at >= 0 && noted.LegTo(path.Legs[at].To) < 0; at = path.Legs[at].Parent)
        {
            yield return path.Legs[at].To;
        }
    }

    private static bool LeadsToNoted(StationPath path, StationPath noted, string place) =>
        path.Legs.Any(l => noted.LegTo(l.To) >= 0 && Before(path, noted, path.LegTo(l.To)).Contains(place));
}
