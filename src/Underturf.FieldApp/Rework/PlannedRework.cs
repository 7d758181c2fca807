using System.Text;
using Underturf.FieldLog;
using Underturf.Planning.Rework;

namespace Underturf.FieldApp;

/// <summary>A rework as it travels from the worker to the page: the plan, and for each step the notes that one tap writes, as bodies of the log.</summary>
public sealed record PlannedRework(ReworkAnswer Plan, IReadOnlyList<IReadOnlyList<string>> Passed, IReadOnlyList<IReadOnlyList<string>> Failed)
{
    public static PlannedRework Of(ReworkAnswer plan) =>
        new(plan, [.. plan.Steps.Select(s => Bodies(s.Passed))], [.. plan.Steps.Select(s => Bodies(s.Failed))]);

    /// <summary>The plan with what one tap writes.</summary>
    public ReworkAnswer Whole() => Plan with { Steps = [.. Plan.Steps.Select((s, i) => s with { Passed = Facts(Passed[i]), Failed = Facts(Failed[i]) })] };

    private static IReadOnlyList<string> Bodies(IReadOnlyList<Fact> facts) => [.. facts.Select(f => Encoding.UTF8.GetString(BodyText.Write(f)))];

    private static IReadOnlyList<Fact> Facts(IReadOnlyList<string> bodies) => [.. Drafts.Read(Encoding.UTF8.GetBytes(string.Join('\n', bodies))).Notes.Select(n => n.Fact)];
}
