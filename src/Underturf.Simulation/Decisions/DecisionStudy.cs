using System.Globalization;
using Underturf.Reasoning.Moves.Planning;

namespace Underturf.Simulation.Decisions;

/// <summary>
/// Holds the planner and the rules of thumb against the exact optimum on the frozen suite. Every policy is followed through every outcome; nothing is sampled. Deterministic.
/// </summary>
public static class DecisionStudy
{
    /// <summary>The reported suite; width, depth and order of the look ahead were chosen on suites of other seeds.</summary>
    public const ulong Seed = 40_001;

    /// <summary>Problems in one row of the report, and in the report.</summary>
    public const int BlockSize = 30, Problems = 300;

    /// <summary>Where the best rule of thumb comes this near to the optimum there is nothing to share out, in minutes.</summary>
    public const double NoGapMinutes = 0.1;

    public static string Heading =>
        $"| problems | optimum | planner | {string.Join(" | ", RuleOfThumb.All.Select(r => r.Name))} | acting at once |\n|---|---|---|{string.Concat(RuleOfThumb.All.Select(_ => "---|"))}---|";

    /// <summary>Expected minutes of one problem.</summary>
    /// <param name="Rules">In the order of <see cref="RuleOfThumb.All"/>.</param>
    public sealed record Result(int Number, double Optimum, double Planner, IReadOnlyList<double> Rules, double ActNow);

    public static Result One(int number)
    {
        var decision = DecisionSuite.Make(Seed, number);
        var (planner, start) = (new Planner(decision), Situation.Start(decision));
        var plans = new Dictionary<long, int?>();
        int? Planned(Situation here)
        {
            if (!plans.TryGetValue(here.Key, out var move))
            {
                plans[here.Key] = move = planner.Next(here.Belief, here.Place, here.Made).Move;
            }

            return move;
        }

        return new Result(
            number,
            ExactOptimum.Minutes(decision),
            PolicyCost.Minutes(start, Planned),
            [.. RuleOfThumb.All.Select(rule => PolicyCost.Minutes(start, here => Planned(here) is null ? null : rule.Choose(here)))],
            start.ActMinutes());
    }

    /// <summary>Mean expected minutes of a block.</summary>
    public static string Row(IReadOnlyList<Result> results)
    {
        var means = new[] { results.Average(r => r.Optimum), results.Average(r => r.Planner) }
            .Concat(RuleOfThumb.All.Select((_, i) => results.Average(r => r.Rules[i])))
            .Append(results.Average(r => r.ActNow));
        return string.Create(CultureInfo.InvariantCulture, $"| {results[0].Number} to {results[^1].Number} | {string.Join(" | ", means.Select(m => m.ToString("F2", CultureInfo.InvariantCulture)))} |");
    }

    /// <summary>The rule with the best mean.</summary>
    public static int BestRule(IReadOnlyList<Result> results) => Enumerable.Range(0, RuleOfThumb.All.Count).MinBy(i => results.Average(r => r.Rules[i]));

    /// <summary>The planner's distance from the optimum, as a share of the rule's, over all problems together.</summary>
    public static double RatioOfSums(IReadOnlyList<Result> results, int rule) =>
        results.Sum(r => r.Planner - r.Optimum) / results.Sum(r => r.Rules[rule] - r.Optimum);

    /// <summary>The same problem by problem, where the rule leaves a gap; least first.</summary>
    public static IReadOnlyList<double> Ratios(IEnumerable<Result> results, int rule) =>
        [.. results.Where(r => r.Rules[rule] - r.Optimum > NoGapMinutes).Select(r => (r.Planner - r.Optimum) / (r.Rules[rule] - r.Optimum)).Order()];
}
