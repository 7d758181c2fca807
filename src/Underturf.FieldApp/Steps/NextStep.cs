using Underturf.Planning.Repair;
using Underturf.Planning.Rework;

namespace Underturf.FieldApp;

/// <summary>The step to do now, with the notes that one tap writes as bodies of the log: so it travels from the worker to the page.</summary>
/// <param name="Expect">What must be seen; nothing where nothing is checked.</param>
/// <param name="Passed">Written when it is done, or when what was expected is seen.</param>
/// <param name="Failed">Written when it is not seen; empty where nothing is checked.</param>
/// <param name="Sights">What may be seen when it is done.</param>
public sealed record NextStep(string Say, string Where, double Minutes, string Caution, string? Expect, IReadOnlyList<string> Passed, IReadOnlyList<string> Failed, IReadOnlyList<StepSight> Sights)
{
    public static NextStep Of(ReworkStep step) =>
        new(step.Say, step.Where, (double)step.Minutes, step.Caution, step.Expect, NoteBodies.Of(step.Passed), NoteBodies.Of(step.Failed), []);

    /// <param name="causes">What may be wrong, and whether it was seen.</param>
    public static NextStep Of(RepairStep step, IReadOnlyList<CauseShare> causes) =>
        new(step.Say, step.Where, (double)step.Minutes, step.Caution, step.Expect, NoteBodies.Of(step.Passed), NoteBodies.Of(step.Failed), [.. step.Sights.Select(s => new StepSight(s.Name, causes.Any(c => c.Name == s.Name && c.Seen), NoteBodies.Of(s.Notes)))]);
}

/// <summary>Something that a step may show.</summary>
/// <param name="Seen">It was noted already.</param>
/// <param name="Notes">Written when it is seen, as bodies of the log.</param>
public sealed record StepSight(string Name, bool Seen, IReadOnlyList<string> Notes);
