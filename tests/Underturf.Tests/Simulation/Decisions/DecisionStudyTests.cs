using Underturf.Simulation.Decisions;

namespace Underturf.Tests.Simulation.Decisions;

/// <summary>The first block of the report, measured again.</summary>
public sealed class DecisionStudyTests(ITestOutputHelper output)
{
    private static readonly Lazy<IReadOnlyList<DecisionStudy.Result>> FirstBlock = new(() =>
    {
        var results = new DecisionStudy.Result[DecisionStudy.BlockSize];
        Parallel.For(0, results.Length, i => results[i] = DecisionStudy.One(i));
        return results;
    });

    [Fact]
    public void The_report_says_what_a_rerun_of_its_first_block_measures()
    {
        output.WriteLine(DecisionStudy.Row(FirstBlock.Value));
        Assert.Contains(DecisionStudy.Row(FirstBlock.Value), Repository.Read("docs/reports/diagnosis.md"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_planner_leaves_at_most_a_third_of_what_the_best_rule_leaves()
    {
        var rule = DecisionStudy.BestRule(FirstBlock.Value);
        Assert.True(DecisionStudy.RatioOfSums(FirstBlock.Value, rule) <= 0.3);
        Assert.True(DecisionStudy.Ratios(FirstBlock.Value, rule).Average() <= 0.3);
    }

    [Fact]
    public void Nobody_beats_the_optimum_and_tests_beat_acting_at_once() => Assert.All(FirstBlock.Value, r =>
    {
        Assert.All(r.Rules.Append(r.Planner), minutes => Assert.True(minutes >= r.Optimum - 1e-9));
        Assert.True(r.Planner <= r.ActNow + 1e-9);
    });
}
