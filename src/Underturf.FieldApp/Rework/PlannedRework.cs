using Underturf.Planning.Rework;

namespace Underturf.FieldApp;

/// <summary>A rework as it travels from the worker to the page: the plan, and for each step the notes that one tap writes, as bodies of the log.</summary>
public sealed record PlannedRework(ReworkAnswer Plan, IReadOnlyList<IReadOnlyList<string>> Passed, IReadOnlyList<IReadOnlyList<string>> Failed)
{
    public static PlannedRework Of(ReworkAnswer plan) =>
        new(plan, [.. plan.Steps.Select(s => NoteBodies.Of(s.Passed))], [.. plan.Steps.Select(s => NoteBodies.Of(s.Failed))]);

    /// <summary>The plan with what one tap writes.</summary>
    public ReworkAnswer Whole() => Plan with { Steps = [.. Plan.Steps.Select((s, i) => s with { Passed = NoteBodies.Read(Passed[i]), Failed = NoteBodies.Read(Failed[i]) })] };
}
