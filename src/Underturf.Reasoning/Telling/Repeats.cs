using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Telling;

/// <summary>What has to be taken again before a question can be answered.</summary>
internal sealed class Repeats(Case owner)
{
    /// <summary>Where worlds with more than this share make both notes likely, they do not contradict each other.</summary>
    private const double Enough = 0.5;

    private readonly Lazy<IReadOnlyList<Conflict>> open = new(() => [.. new Contradictions(owner).Find().Where(c => c.IsOpen)]);

    /// <summary>Those of one subject; a supply matters where a note hangs on its volts.</summary>
    public IReadOnlyList<Conflict> Of(Subject subject, IReadOnlyList<Evidence> evidence) => [.. open.Value.Where(c =>
        (c.Stations.Any(subject.Stations.Contains) || (c.Stations.Count == 0 && IsFed(c, evidence))) && !IsReconciled(c, subject.Worlds, subject.Outlook))];

    /// <summary>Those that no question tells.</summary>
    public IReadOnlyList<Conflict> Beside(IReadOnlyList<OpenQuestion> questions, IReadOnlyDictionary<string, Belief> beliefs)
    {
        var asked = questions.SelectMany(q => q.Stations).ToHashSet(StringComparer.Ordinal);
        var told = questions.SelectMany(q => q.Repeats).SelectMany(r => r.Entries).ToHashSet(StringComparer.Ordinal);
        return [.. open.Value.Where(c => !told.Contains(c.Second.Entry) && (c.Stations.Count == 0
            || (!c.Stations.Select(owner.View.StationNumber).Any(asked.Contains)
                && !IsReconciled(c, beliefs[c.Controller].Stations[c.Stations[0]], beliefs[c.Controller].OutlookOf(c.Stations[0])))))];
    }

    public Repeat Told(Conflict conflict) => new(conflict.What, owner.View.Name(conflict.Place), conflict.Why, [conflict.First.Entry, conflict.Second.Entry]);

    /// <summary>Either of the two may be the wrong one, so acting now is wrong with even odds: that is what it saves.</summary>
    public Move Again(Conflict conflict, string question) => new(
        $"take again: {conflict.What} ({conflict.Why})",
        owner.View.Name(conflict.Place),
        conflict.Minutes,
        owner.Book.Loss.WrongRepairMinutes / 2,
        conflict.Caution,
        question)
    {
        Place = conflict.Place,
        Steps = [new MoveStep($"take again: {conflict.What}", conflict.Minutes, conflict.Caution, question, conflict.Asks)],
    };

    private bool IsFed(Conflict supply, IReadOnlyList<Evidence> evidence) => evidence.Any(e =>
        owner.Paths[e.Stations[0]].Controller == supply.Controller && (e is RunEvidence or ReadingEvidence { IsFed: true }));

    private static bool IsReconciled(Conflict conflict, IReadOnlyList<World> worlds, Outlook outlook) =>
        worlds.Where(w => conflict.Reconciles(w, outlook)).Sum(w => w.Probability) > Enough;
}
