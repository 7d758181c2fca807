using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Moves;
using World = Underturf.Reasoning.Diagnosis.World;

namespace Underturf.Tests.Reasoning;

/// <summary>Knowing more never costs: true of any belief and any move, so it is tried on random ones.</summary>
public sealed class InformationTests
{
    [Fact]
    public void No_outcome_table_raises_the_expected_loss()
    {
        var chance = new SeededGenerator(31);
        for (var i = 0; i < 300; i++)
        {
            var worlds = Worlds(chance);
            var belief = Normalised(worlds.Count, chance);
            var loss = new Loss(PracticeBook.Default, worlds, shortfall: i % 2 == 0);
            var columns = 2 + chance.NextInt(6);
            var outcomes = new Outcomes([.. worlds.Select(_ => Normalised(columns, chance))]);
            Assert.True(outcomes.ExpectedLoss(belief, loss) <= loss.Of(belief) + 1e-9);
        }
    }

    [Fact]
    public void An_outcome_that_says_nothing_saves_nothing()
    {
        var chance = new SeededGenerator(32);
        var worlds = Worlds(chance);
        var belief = Normalised(worlds.Count, chance);
        var loss = new Loss(PracticeBook.Default, worlds, shortfall: false);
        var outcomes = new Outcomes([.. worlds.Select(_ => new[] { 0.3, 0.7 })]);
        Assert.Equal(loss.Of(belief), outcomes.ExpectedLoss(belief, loss), 9);
    }

    [Fact]
    public void Chances_of_a_reading_sum_to_one_and_knowing_never_costs()
    {
        var chance = new SeededGenerator(33);
        for (var i = 0; i < 200; i++)
        {
            var worlds = Worlds(chance);
            var belief = Normalised(worlds.Count, chance);
            var loss = new Loss(PracticeBook.Default, worlds, shortfall: false);
            var predictions = worlds.Select(_ => (ValueTuple<double, double, bool>?)(chance.NextDouble() * 60, 0.1 + chance.NextDouble(), chance.NextInt(5) == 0)).ToList();
            predictions[0] = null;
            Assert.True(Outcomes.OfReading([.. predictions], belief, most: 50).ExpectedLoss(belief, loss) <= loss.Of(belief) + 1e-9);
        }
    }

    private static List<World> Worlds(SeededGenerator chance) =>
    [
        new World([], 0),
        .. Enumerable.Range(0, 2 + chance.NextInt(8)).Select(i => new World(
            [new Suspect { Fault = PracticeBook.Default.Faults[chance.NextInt(PracticeBook.Default.Faults.Count)], Place = $"b{i % 3}", Weight = 1 }], 0)),
    ];

    private static double[] Normalised(int count, SeededGenerator chance)
    {
        var row = Enumerable.Range(0, count).Select(_ => chance.NextDouble() + 1e-3).ToArray();
        var sum = row.Sum();
        return [.. row.Select(r => r / sum)];
    }
}
