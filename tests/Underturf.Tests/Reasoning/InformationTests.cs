using Underturf.Numerics;
using Underturf.Reasoning.Moves;
using Underturf.Reasoning.Moves.Planning;

namespace Underturf.Tests.Reasoning;

/// <summary>Knowing more never costs: true of any belief and any move, so it is tried on random ones.</summary>
public sealed class InformationTests
{
    [Fact]
    public void No_free_move_raises_the_expected_loss()
    {
        var chance = new SeededGenerator(31);
        for (var i = 0; i < 300; i++)
        {
            var worlds = 3 + chance.NextInt(8);
            var columns = 2 + chance.NextInt(6);
            AssertNeverCosts(Decided(worlds, [.. Enumerable.Range(0, worlds).Select(_ => Normalised(columns, chance))], chance));
        }
    }

    [Fact]
    public void An_outcome_that_says_nothing_is_no_option()
    {
        var chance = new SeededGenerator(32);
        var decision = Decided(6, [.. Enumerable.Range(0, 6).Select(_ => new[] { 0.3, 0.7 })], chance);
        Assert.Empty(new Planner(decision).Next(decision.Chances, 0, new HashSet<int>()).Options);
    }

    [Fact]
    public void Chances_of_a_reading_sum_to_one_and_knowing_never_costs()
    {
        var chance = new SeededGenerator(33);
        for (var i = 0; i < 200; i++)
        {
            var worlds = 3 + chance.NextInt(8);
            var belief = Normalised(worlds, chance);
            var predictions = Enumerable.Range(0, worlds).Select(_ => (ValueTuple<double, double, bool>?)(chance.NextDouble() * 60, 0.1 + chance.NextDouble(), chance.NextInt(5) == 0)).ToList();
            predictions[0] = null;
            var chances = Outcomes.OfReading([.. predictions], belief, most: 50).Chances;
            Assert.All(chances, row => Assert.Equal(1, row.Sum(), 9));
            AssertNeverCosts(Decided(worlds, chances, chance) with { Chances = belief });
        }
    }

    private static void AssertNeverCosts(Decision decision)
    {
        var plan = new Planner(decision).Next(decision.Chances, 0, new HashSet<int>());
        Assert.All(plan.Options, o => Assert.True(o.Minutes <= plan.ActMinutes + 1e-9));
    }

    /// <summary>One free move on the spot, and repairs that cure some of the worlds.</summary>
    private static Decision Decided(int worlds, IReadOnlyList<double[]> chances, SeededGenerator chance) => new(
        Normalised(worlds, chance),
        [new DecisionMove(0, 0, chances)],
        [.. Enumerable.Range(0, worlds).Select(a => new DecisionAct(0, 100 * chance.NextDouble(), [.. Enumerable.Range(0, worlds).Select(w => w == a || chance.NextInt(6) == 0)]))],
        [[0]],
        150,
        0);

    private static double[] Normalised(int count, SeededGenerator chance)
    {
        var row = Enumerable.Range(0, count).Select(_ => chance.NextDouble() + 1e-3).ToArray();
        var sum = row.Sum();
        return [.. row.Select(r => r / sum)];
    }
}
