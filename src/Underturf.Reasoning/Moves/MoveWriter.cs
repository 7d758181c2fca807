using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Telling;

namespace Underturf.Reasoning.Moves;

/// <summary>Puts visits and first moves into words.</summary>
internal sealed class MoveWriter(Case owner)
{
    private readonly Walks walks = new(owner);

    private readonly HashSet<string> unsafeStations = [.. owner.Evidence.OfType<ReadingEvidence>().Where(e => owner.Book.Supply.IsUnsafe(e.Shown)).SelectMany(e => e.Stations)];

    /// <summary>Worlds that are weighed in pairs for what a step tells apart.</summary>
    private const int Weighed = 12;

    public Move Write(Visit visit)
    {
        var action = string.Join("; then ", visit.Steps.Select(s => s.Action));
        var subject = visit.Leading;
        return walks.Reached(new Move(
            visit.Remedy is { } remedy ? Settled(remedy, action, Say.Share(subject.Cure(remedy))) : action,
            owner.View.Name(visit.Place),
            visit.Minutes,
            visit.Worth,
            string.Join(" ", Cautions(visit).Distinct()),
            subject.Subject.Id)
        {
            Place = visit.Place,
            Steps = visit.Steps,
            LeavesOut = visit.Remedy?.Cured is { MoreCoils: > 0 } ? PriceWords.JointOnly : string.Empty,
            Why = visit.Remedy is null ? Tells(visit) : string.Empty,
        }, visit.WalkMinutes);
    }

    private static string Settled(Remedy remedy, string action, string share) => remedy.Cured?.Note is not null
        ? $"{action} ({share} sure that the note is wrong)"
        : $"enough known: {action} ({share} sure)";

    /// <summary>Where more volts than are safe to touch were read, that comes first, whatever is done.</summary>
    private IEnumerable<string> Cautions(Visit visit) =>
        visit.Worths.Keys.Any(p => p.Subject.Stations.Any(unsafeStations.Contains)) ? [owner.Book.Supply.TouchCaution, .. Usual(visit)] : Usual(visit);

    private static IEnumerable<string> Usual(Visit visit) => visit.Steps.Select(s => s.Caution);

    /// <summary>A first move of one question by itself.</summary>
    public Move Write(SubjectPlan subject, SubjectPlan.Option option) => Write(new Visit(
        option.Candidate.Place,
        [option.Candidate.Step],
        new Dictionary<SubjectPlan, double> { [subject] = option.Worth },
        option.WalkMinutes));

    /// <summary>For each question that the visit serves the two things that its steps tell apart best, weighed by how likely they are.</summary>
    private string Tells(Visit visit) => string.Join("; ", visit.Worths
        .OrderByDescending(w => w.Value)
        .Select(w => w.Key)
        .Select(s => Pair(s, [.. s.Candidates.Where(c => visit.Steps.Any(v => v.Asks == c.Step.Asks))]))
        .OfType<string>());

    private string? Pair(SubjectPlan subject, IReadOnlyList<Candidate> steps)
    {
        var pairs =
            from a in Enumerable.Range(0, Math.Min(Weighed, subject.Worlds.Count))
            from b in Enumerable.Range(0, a)
            where subject.Remedies.Any(r => r.Cures[a] != r.Cures[b]) && Named(subject.Worlds[a]) != Named(subject.Worlds[b])
            let apart = steps.Select(s => s.Chances[a].Zip(s.Chances[b]).Sum(c => Math.Abs(c.First - c.Second))).DefaultIfEmpty().Max()
            orderby subject.Belief[a] * subject.Belief[b] * apart descending
            select (First: b, Second: a, Apart: apart);
        return pairs.FirstOrDefault() is { Apart: > 0 } best
            ? $"tells \"{Named(subject.Worlds[best.First])}\" from \"{Named(subject.Worlds[best.Second])}\""
            : null;
    }

    private string Named(World world) => world.IsSound
        ? owner.Book.AsBuilt.Say.Split(':')[0]
        : string.Join(" and ", world.Suspects.Select(s => s.Fault.Say + (s.Place is { } place ? $" at {owner.View.Name(place)}" : string.Empty)));
}
