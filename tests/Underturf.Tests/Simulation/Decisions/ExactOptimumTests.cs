using Underturf.Reasoning.Moves.Planning;
using Underturf.Simulation.Decisions;

namespace Underturf.Tests.Simulation.Decisions;

/// <summary>The yardstick against plain recursion without bounds and without memory, on the smallest problems of a suite that is not reported.</summary>
public sealed class ExactOptimumTests
{
    private const ulong Seed = 1;

    private const int Few = 5;

    [Fact]
    public void It_equals_plain_recursion_over_every_move_and_outcome()
    {
        var tiny = Enumerable.Range(0, 120).Select(i => DecisionSuite.Make(Seed, i)).Where(d => d.Moves.Count <= Few).ToList();
        Assert.True(tiny.Count > 10);
        Assert.All(tiny, d => Assert.Equal(Plain(Situation.Start(d)), ExactOptimum.Minutes(d), 9));
    }

    [Fact]
    public void Perfect_tests_of_single_parts_are_made_in_the_order_worked_out_by_hand()
    {
        // One perfect test a part, ten minutes each, no walk; nothing else can be done but the one right act, free, or being wrong for 1000 minutes.
        double[] chances = [0.4, 0.3, 0.2, 0.1];
        double[] minutes = [20, 5, 2, 10];
        var decision = new Decision(
            chances,
            [.. minutes.Select((m, i) => new DecisionMove(0, m, [.. chances.Select((_, h) => h == i ? new[] { 0.0, 1 } : [1, 0])]))],
            [.. chances.Select((_, i) => new DecisionAct(null, 0, [.. chances.Select((_, h) => h == i)]))],
            [[0]],
            1000,
            0);

        // Exact, by hand: three tests name the part, and of the 24 orders the third part, the second and the fourth take least; the next best is 11.4.
        Assert.Equal(2 + (0.8 * 5) + (0.5 * 10), ExactOptimum.Minutes(decision), 9);
    }

    [Fact]
    public void A_suite_s_problem_is_small_and_its_chances_sum_to_one()
    {
        for (var i = 0; i < 100; i++)
        {
            var d = DecisionSuite.Make(Seed, i);
            Assert.InRange(d.Chances.Count, 2, DecisionSuite.MostHypotheses);
            Assert.InRange(d.Moves.Count, 1, DecisionSuite.MostMoves);
            Assert.Equal(1, d.Chances.Sum(), 12);
            Assert.All(d.Moves, m => Assert.True(m.Outcomes[0].Count <= Situation.MostOutcomes && m.Outcomes.Count == d.Chances.Count));
            Assert.All(d.Moves.SelectMany(m => m.Outcomes), row => Assert.Equal(1, row.Sum(), 12));
        }
    }

    [Fact]
    public void A_problem_depends_on_its_seed_and_number_alone()
    {
        var (one, again) = (DecisionSuite.Make(Seed, 17), DecisionSuite.Make(Seed, 17));
        Assert.Equal(one.Chances, again.Chances);
        Assert.Equal(one.Moves.Select(m => m.Minutes), again.Moves.Select(m => m.Minutes));
        Assert.NotEqual(one.Chances, DecisionSuite.Make(Seed, 18).Chances);
    }

    [Fact]
    public void No_way_round_is_shorter_than_the_direct_one()
    {
        for (var i = 0; i < 50; i++)
        {
            var walk = DecisionSuite.Make(Seed, i).WalkMinutes;
            Assert.All(
                from a in Enumerable.Range(0, walk.Count) from b in Enumerable.Range(0, walk.Count) from c in Enumerable.Range(0, walk.Count) select (a, b, c),
                t => Assert.True(walk[t.a][t.c] <= walk[t.a][t.b] + walk[t.b][t.c] + 1e-9));
        }
    }

    private static double Plain(Situation here)
    {
        var moves = Enumerable.Range(0, here.Decision.Moves.Count).Where(m => !here.IsMade(m));
        return moves.Select(m => (here.Minutes(m) * here.Total) + here.After(m).Sum(Plain)).Append(here.ActMinutes()).Min();
    }
}
