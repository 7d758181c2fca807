using Underturf.Reasoning.Moves.Planning;
using Underturf.Simulation.Decisions;

namespace Underturf.Tests.Reasoning.Planning;

/// <summary>The look ahead, by what must be true of any and on decisions small enough to do by hand. All values invented.</summary>
public sealed class PlannerTests
{
    private const ulong Seed = 1;

    private static readonly HashSet<int> Nothing = [];

    [Fact]
    public void It_never_expects_more_minutes_than_acting_at_once()
    {
        foreach (var (decision, plan) in Drawn(80))
        {
            Assert.True(plan.Minutes <= plan.ActMinutes + 1e-9);
            Assert.Equal(plan.Move is null, plan.Minutes == plan.ActMinutes);
            Assert.Equal(Situation.Start(decision).ActMinutes(), plan.ActMinutes, 9);
        }
    }

    [Fact]
    public void What_it_expects_can_be_carried_out_and_no_plan_expects_less_than_the_optimum()
    {
        foreach (var (decision, plan) in Drawn(12))
        {
            var planner = new Planner(decision);
            var carriedOut = PolicyCost.Minutes(Situation.Start(decision), here => planner.Next(here.Belief, here.Place, here.Made).Move);
            var optimum = ExactOptimum.Minutes(decision);
            Assert.True(plan.Minutes >= optimum - 1e-9);
            Assert.True(carriedOut <= plan.Minutes + 0.05, $"{carriedOut} {plan.Minutes}");
        }
    }

    [Fact]
    public void On_the_smallest_decisions_it_is_the_optimum_but_for_outcomes_too_rare_to_follow()
    {
        const double RareMinutes = 0.02;
        var tiny = Enumerable.Range(0, 150).Select(i => DecisionSuite.Make(Seed, i) with { SettledMinutes = 0 }).Where(d => d.Moves.Count <= 4).ToList();
        Assert.True(tiny.Count > 10);
        Assert.All(tiny, d => Assert.Equal(ExactOptimum.Minutes(d), new Planner(d).Next(d.Chances, 0, Nothing).Minutes, RareMinutes));
    }

    [Fact]
    public void A_far_box_with_two_readings_that_only_pay_together_is_visited_once_for_both()
    {
        // Four equal hypotheses; each reading at the far box halves them. One alone saves nothing that its minutes and the walk do not cost.
        var decision = Four([new DecisionMove(1, 3, Halves(0, 1)), new DecisionMove(1, 3, Halves(0, 2))], walkMinutes: 12);
        var planner = new Planner(decision);
        var first = planner.Next(decision.Chances, 0, Nothing);
        Assert.NotNull(first.Move);
        var then = planner.Next([0.5, 0.5, 0, 0], 1, new HashSet<int> { 0 });
        Assert.Equal(1, then.Move);
        Assert.Equal(12 + 3 + 3 + 20, first.Minutes, 6);
    }

    [Fact]
    public void The_walk_decides_between_two_readings_that_say_the_same()
    {
        var decision = Four([new DecisionMove(1, 3, Halves(0, 1)), new DecisionMove(0, 6, Halves(0, 1)), new DecisionMove(0, 6, Halves(0, 2))], walkMinutes: 12);
        Assert.Contains(new Planner(decision).Next(decision.Chances, 0, Nothing).Move!.Value, new[] { 1, 2 });
        Assert.Equal(0, new Planner(decision).Next(decision.Chances, 1, Nothing).Move);
    }

    [Fact]
    public void Somebody_who_knows_enough_acts()
    {
        var decision = Four([new DecisionMove(0, 0.1, Halves(0, 1))], walkMinutes: 1);
        var plan = new Planner(decision).Next([0.98, 0.01, 0.01, 0], 0, Nothing);
        Assert.Null(plan.Move);
        Assert.Equal(0, plan.Act);
        Assert.True(plan.Settled);
    }

    [Fact]
    public void A_move_that_was_made_is_not_made_again()
    {
        foreach (var (decision, plan) in Drawn(60).Where(p => p.Plan.Move is not null))
        {
            var made = new HashSet<int> { plan.Move!.Value };
            Assert.DoesNotContain(new Planner(decision).Next(decision.Chances, 0, made).Options, o => o.Move == plan.Move);
        }
    }

    [Fact]
    public void Hypotheses_that_nothing_tells_apart_may_as_well_be_one()
    {
        foreach (var (decision, plan) in Drawn(40))
        {
            Decision twice = decision with
            {
                Chances = [.. decision.Chances.Select(c => c / 2), .. decision.Chances.Select(c => c / 2)],
                Moves = [.. decision.Moves.Select(m => m with { Outcomes = [.. m.Outcomes, .. m.Outcomes] })],
                Acts = [.. decision.Acts.Select(a => a with { Cures = [.. a.Cures, .. a.Cures] })],
            };
            var same = new Planner(twice).Next(twice.Chances, 0, Nothing);
            Assert.Equal(plan.Move, same.Move);
            Assert.Equal(plan.Minutes, same.Minutes, 9);
        }
    }

    private static IEnumerable<(Decision Decision, Plan Plan)> Drawn(int count) =>
        Enumerable.Range(0, count).Select(i => DecisionSuite.Make(Seed, i)).Select(d => (d, new Planner(d).Next(d.Chances, 0, Nothing)));

    private static Decision Four(IReadOnlyList<DecisionMove> moves, double walkMinutes) => new(
        [0.25, 0.25, 0.25, 0.25],
        moves,
        [.. Enumerable.Range(0, 4).Select(a => new DecisionAct(null, 20, [.. Enumerable.Range(0, 4).Select(h => h == a)]))],
        [[0, walkMinutes], [walkMinutes, 0]],
        60,
        2);

    /// <summary>Shows the one thing in two of the four hypotheses and the other in the rest.</summary>
    private static double[][] Halves(int one, int other) => [.. Enumerable.Range(0, 4).Select(h => h == one || h == other ? new[] { 1.0, 0 } : [0, 1])];
}
