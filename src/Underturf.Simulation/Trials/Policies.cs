using Underturf.Reasoning;

namespace Underturf.Simulation.Trials;

/// <summary>A way to choose the next move.</summary>
internal sealed record TrialPolicy(string Name, Func<TrialScene, Move?> Choose);

/// <summary>The notebook's own first move, and the rules of thumb that it is compared with.</summary>
internal static class Policies
{
    public static TrialPolicy Notebook { get; } = new("notebook", Own);

    public static IReadOnlyList<TrialPolicy> RulesOfThumb { get; } =
    [
        new("controller outwards", s => RuleOfThumb.EachQuestion(s, RuleOfThumb.Outwards)),
        new("halve the run", s => RuleOfThumb.EachQuestion(s, RuleOfThumb.Halving)),
        new("nearest first", s => RuleOfThumb.AllQuestions(s, m => s.WalkMinutes(m.Place))),
        new("most likely first", s => RuleOfThumb.EachQuestion(s, RuleOfThumb.LikeliestPlace)),
        new("cheapest first", s => RuleOfThumb.AllQuestions(s, m => s.WalkMinutes(m.Place) + m.Steps.Sum(step => step.Minutes))),
    ];

    public static IReadOnlyList<TrialPolicy> All { get; } = [Notebook, .. RulesOfThumb];

    /// <summary>The first move of all questions; where none saves more than its minutes, the act of the first question of which enough is known.</summary>
    private static Move? Own(TrialScene scene) => scene.Answers.Moves.FirstOrDefault(RuleOfThumb.CanBeDone) ?? RuleOfThumb.Settled(scene);
}
