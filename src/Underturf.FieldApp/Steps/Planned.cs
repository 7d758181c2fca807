using Underturf.Planning.Repair;
using Underturf.Planning.Rework;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>A plan that is carried out step by step: one tap a step, and after each it is made anew.</summary>
/// <param name="Next">The step to do now; nothing where all is done.</param>
/// <param name="Later">What comes after it, in words.</param>
public sealed record Planned<T>(T Plan, NextStep? Next, IReadOnlyList<string> Later);

/// <summary>What is carried out step by step.</summary>
public static class Planned
{
    public static Planned<ReworkAnswer> Of(ReworkAnswer plan) =>
        new(plan, plan.Steps.Count > 0 ? NextStep.Of(plan.Steps[0]) : null, [.. plan.Steps.Skip(1).Select(s => $"{s.Say}, at {s.Where}")]);

    public static Outcome<Planned<RepairAnswer>> Of(Outcome<RepairAnswer> planned) => planned.Succeeded
        ? new Planned<RepairAnswer>(planned.Value, planned.Value.Steps is [var next, ..] ? NextStep.Of(next, planned.Value.Causes) : null, [.. planned.Value.Steps.Skip(1).Select(s => s.Say)])
        : planned.Problem!;
}
