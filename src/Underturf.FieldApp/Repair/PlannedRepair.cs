using Underturf.Planning.Repair;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>A repair as it travels from the worker to the page: the plan, and for each step the notes that one tap writes, as bodies of the log.</summary>
/// <param name="Sights">For each step and each thing that may be seen.</param>
/// <param name="Problem">Why there is no plan.</param>
public sealed record PlannedRepair(
    RepairAnswer? Plan, IReadOnlyList<IReadOnlyList<string>> Passed, IReadOnlyList<IReadOnlyList<string>> Failed, IReadOnlyList<IReadOnlyList<IReadOnlyList<string>>> Sights, Problem? Problem)
{
    public static PlannedRepair Of(Outcome<RepairAnswer> planned) => planned.Succeeded
        ? new(
            planned.Value,
            [.. planned.Value.Steps.Select(s => NoteBodies.Of(s.Passed))],
            [.. planned.Value.Steps.Select(s => NoteBodies.Of(s.Failed))],
            [.. planned.Value.Steps.Select(s => (IReadOnlyList<IReadOnlyList<string>>)[.. s.Sights.Select(t => NoteBodies.Of(t.Notes))])],
            null)
        : new(null, [], [], [], planned.Problem);

    /// <summary>The plan with what one tap writes.</summary>
    public Outcome<RepairAnswer> Whole() => Plan is null ? Problem! : Plan with
    {
        Steps = [.. Plan.Steps.Select((s, i) => s with
        {
            Passed = NoteBodies.Read(Passed[i]),
            Failed = NoteBodies.Read(Failed[i]),
            Sights = [.. s.Sights.Select((t, k) => t with { Notes = NoteBodies.Read(Sights[i][k]) })],
        })],
    };
}
