using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Moves;

/// <summary>A repair at a place; nothing to do where the repair has no name.</summary>
/// <param name="Place">Where one goes for it; nothing where one need not go anywhere.</param>
/// <param name="Cured">A thing that it cures, of the likeliest world; nothing where nothing is broken.</param>
/// <param name="Cures">Whether it cures each world.</param>
internal sealed record Remedy(string Repair, string? Place, double Minutes, Suspect? Cured, IReadOnlyList<bool> Cures);

/// <summary>What could be done about a subject, for the worlds in which it may live, likeliest first.</summary>
internal sealed class RepairList(Case owner, Subject subject, IReadOnlyList<World> worlds)
{
    private readonly PracticeBook book = owner.Book;

    public IReadOnlyList<Remedy> Find()
    {
        var right = worlds.Select(w => Right(w).ToList()).ToList();
        return [.. right.SelectMany(r => r).Distinct().Select(r => Of(r, right))];
    }

    private Remedy Of(Work what, List<List<Work>> right)
    {
        var cured = worlds[right.FindIndex(r => r.Contains(what))].Suspects
            .FirstOrDefault(s => s.Fault.Repair == what.Repair && (what.Place is null || (s.Place == what.Place && s.Seat.IsUnfound == what.IsUnfound)));
        var place = what.Repair.Length == 0 ? null : what.Place ?? cured?.Place ?? (NoteOf(cured) as ReadingEvidence)?.Place ?? owner.Paths[subject.Stations[0]].Controller;
        return new Remedy(what.Repair, place, book.Repair(what.Repair)?.Minutes ?? 0, cured, [.. right.Select(r => r.Contains(what))]);
    }

    /// <summary>
    /// What is right in a world: the repair of its fault, at its place where the repair has one; of any of several faults, for all have to be
    /// mended; where nothing is to be mended leaving it alone. A note that is wrong besides is no repair.
    /// </summary>
    private IEnumerable<Work> Right(World world)
    {
        if (world.AsksNothing)
        {
            return [new Work(subject.IsWeak ? book.AsBuilt.WeakRepair : string.Empty, null, false)];
        }

        var asking = world.Suspects.Where(s => !s.Fault.AsksNothing).ToList();
        return asking
            .Where(s => s.Fault.Repair.Length > 0 && (s.Note is null || asking.Count == 1))
            .Select(s => book.Repair(s.Fault.Repair)!.Placed ? new Work(s.Fault.Repair, s.Place, s.Seat.IsUnfound) : new Work(s.Fault.Repair, null, false));
    }

    /// <summary>The work, or the reading to repeat where the note itself is what may be wrong.</summary>
    public MoveStep Step(Remedy remedy)
    {
        var (repair, note) = (book.Repair(remedy.Repair)!, NoteOf(remedy.Cured));
        var caution = note switch
        {
            RunEvidence => book.Run.Caution,
            ReadingEvidence reading => reading.Caution,
            _ => repair.Caution,
        };
        Fact asks = note is null ? Asked.Work(repair.Name, remedy.Place!, remedy.Cured, subject) : Asked.Again(note, book);
        return new MoveStep(repair.Say + Whose(remedy.Cured) + Unfound(remedy.Cured), remedy.Minutes, caution, subject.Id, asks);
    }

    private Evidence? NoteOf(Suspect? cured) => owner.Evidence.FirstOrDefault(e => e.Entry == cured?.Note);

    private string Unfound(Suspect? cured) => cured is not { Seat.IsUnfound: true } ? string.Empty
        : subject.LegOf(cured, owner) is { } leg ? $", in a box between {owner.View.Name(leg.From)} and {owner.View.Name(leg.To)} that has to be found first"
        : $", in a box farther on than {owner.View.Name(cured.Place!)} that has to be found first";

    private string Whose(Suspect? cured)
    {
        var isCommon = cured?.Fault.Scope is FaultScope.CommonConductor or FaultScope.CommonSplice;
        var who = subject.Stations.Count <= 2 ? string.Join(" and ", subject.Stations.Select(owner.View.Name))
            : isCommon ? $"{subject.Stations.Count} stations"
            : string.Empty;
        return who.Length == 0 ? who : $", {(isCommon ? "common of " : string.Empty)}{who}";
    }

    /// <summary>A repair by name, at its place where it has one.</summary>
    private readonly record struct Work(string Repair, string? Place, bool IsUnfound);
}
