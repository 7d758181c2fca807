using System.Globalization;
using Underturf.Simulation.Decisions;
using Result = Underturf.Simulation.Decisions.DecisionStudy.Result;

namespace Underturf.Benchmarks;

/// <summary>How near do the moves come to the exact optimum, beside rules of thumb, on the frozen suite of small decisions?</summary>
internal static class Decisions
{
    private const ulong BootstrapSeed = 40_002;

    public static int Run(TextWriter output, IReadOnlyList<string> arguments)
    {
        var count = Math.Max(1, arguments.Whole(0) ?? DecisionStudy.Problems);
        var results = new Result[count];
        Parallel.For(0, count, i => results[i] = DecisionStudy.One(i));
        output.WriteLine(DecisionStudy.Heading);
        foreach (var block in results.Chunk(DecisionStudy.BlockSize))
        {
            output.WriteLine(DecisionStudy.Row(block));
        }

        output.WriteLine();
        Ratios(output, results);
        Each(output, results);
        return 0;
    }

    private static void Ratios(TextWriter output, Result[] results)
    {
        var rule = DecisionStudy.BestRule(results);
        var ratios = DecisionStudy.Ratios(results, rule);
        var even = results.Where(r => r.Rules[rule] - r.Optimum <= DecisionStudy.NoGapMinutes).ToList();
        var mean = Bootstrap.Interval(results, s => DecisionStudy.Ratios(s, rule).Average(), BootstrapSeed);
        var sums = Bootstrap.Interval(results, s => DecisionStudy.RatioOfSums(s, rule), BootstrapSeed);
        output.WriteLine(Line($"Best rule over the suite: {RuleOfThumb.All[rule].Name}. (planner - optimum) / (best rule - optimum): mean {ratios.Average():F3}, 95 % interval {mean.Low:F3} to {mean.High:F3}, 95th percentile {ratios[(int)(0.95 * ratios.Count)]:F3}, largest {ratios[^1]:F3}, over the {ratios.Count} problems where the rule leaves more than {DecisionStudy.NoGapMinutes} min."));
        output.WriteLine(Line($"Ratio of the sums over all {results.Length}: {DecisionStudy.RatioOfSums(results, rule):F3}, 95 % interval {sums.Low:F3} to {sums.High:F3}."));
        output.WriteLine(Line($"In the other {even.Count} the planner is {Math.Max(0, even.Sum(r => r.Planner - r.Optimum) / Math.Max(1, even.Count)):F3} min above the optimum in the mean, at most {Math.Max(0, even.Select(r => r.Planner - r.Optimum).DefaultIfEmpty().Max()):F2}."));
        output.WriteLine(Line($"Planner within 0.01 min of the optimum: {results.Count(r => r.Planner - r.Optimum < 0.01)} of {results.Length}; furthest {results.Max(r => r.Planner - r.Optimum):F2} min."));
    }

    /// <summary>Against whichever rule happens to be best in each problem, which nobody can know beforehand.</summary>
    private static void Each(TextWriter output, Result[] results)
    {
        var best = results.Select(r => r with { Rules = [r.Rules.Min()] }).ToList();
        var ratios = DecisionStudy.Ratios(best, 0);
        output.WriteLine(Line($"Against the best rule of each problem, known only afterwards: mean {ratios.Average():F3} over {ratios.Count} problems, ratio of the sums {DecisionStudy.RatioOfSums(best, 0):F3}."));
    }

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
