using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

public sealed class ChoiceWeightsTests
{
    [Fact]
    public void Without_choices_the_weights_are_those_of_the_prior()
    {
        var learned = ChoiceWeights.Learn([], [1, -2], 0.5, 0.1);
        Assert.Equal([1, -2], learned.Mean);
        Assert.All(learned.Spread, s => Assert.Equal(0.5, s, 12));
    }

    [Fact]
    public void One_feature_and_many_choices_give_the_logarithm_of_the_odds()
    {
        // Half the alternatives have the feature; three of four choices fall on them: odds of three, so a weight of ln 3.
        double[][] alternatives = [[.. Enumerable.Range(0, 100).Select(i => i % 2.0)]];
        var choices = Enumerable.Range(0, 4000).Select(i => new Choice([i % 4 == 0 ? 0 : 1], alternatives)).ToList();
        var learned = ChoiceWeights.Learn(choices, [0], 10, 1e-9);
        Assert.Equal(Math.Log(3), learned.Mean[0], 3);
        Assert.Equal(1 / Math.Sqrt(4000 * 0.75 * 0.25), learned.Spread[0], 3);
    }

    [Fact]
    public void At_the_mode_no_small_step_makes_the_posterior_greater()
    {
        var chance = new SeededGenerator(5);
        var choices = Made(chance, [1.5, -1, 0.5], 40);
        var learned = ChoiceWeights.Learn(choices, [0.5, 0, 0], 1, 1e-9);
        var best = LogPosterior(choices, [.. learned.Mean], [0.5, 0, 0]);
        for (var k = 0; k < 3; k++)
        {
            foreach (var step in new[] { -0.01, 0.01 })
            {
                double[] moved = [.. learned.Mean];
                moved[k] += step;
                Assert.True(LogPosterior(choices, moved, [0.5, 0, 0]) < best);
            }
        }
    }

    [Fact]
    public void Weights_that_made_the_choices_lie_within_their_intervals_nineteen_times_of_twenty()
    {
        var (chance, within) = (new SeededGenerator(20260714), 0);
        for (var round = 0; round < 200; round++)
        {
            double[] truth = [chance.NextNormal(), chance.NextNormal(), chance.NextNormal()];
            var learned = ChoiceWeights.Learn(Made(chance, truth, 25), [0, 0, 0], 1, 1e-9);
            within += Enumerable.Range(0, 3).Count(k => Math.Abs(learned.Mean[k] - truth[k]) < 1.96 * learned.Spread[k]);
        }

        Assert.InRange(within / 600.0, 0.92, 0.98);
    }

    [Fact]
    public void Draws_have_the_mean_and_the_spread_that_are_told()
    {
        var learned = ChoiceWeights.Learn(Made(new SeededGenerator(9), [1, 0, -1], 30), [0, 0, 0], 1, 0.05);
        var chance = new SeededGenerator(10);
        var draws = Enumerable.Range(0, 20000).Select(_ => learned.Draw(chance)).ToList();
        for (var k = 0; k < 3; k++)
        {
            var mean = draws.Average(d => d[k]);
            Assert.Equal(learned.Mean[k], mean, 1.5e-2);
            Assert.Equal(learned.Spread[k], Math.Sqrt(draws.Average(d => (d[k] - mean) * (d[k] - mean))), 1.5e-2);
        }
    }

    private static List<Choice> Made(SeededGenerator chance, double[] weights, int count)
    {
        double[][] alternatives = [.. weights.Select(_ => Enumerable.Range(0, 60).Select(_ => chance.NextDouble() * 2).ToArray())];
        double[] shares = [.. Enumerable.Range(0, 60).Select(a => Math.Exp(weights.Select((w, k) => w * alternatives[k][a]).Sum()))];
        return [.. Enumerable.Range(0, count).Select(_ => chance.Choose(shares)).Select(a => new Choice([.. alternatives.Select(layer => layer[a])], alternatives))];
    }

    private static double LogPosterior(IReadOnlyList<Choice> choices, double[] weights, double[] prior)
    {
        double Of(Choice c, Func<int, double> feature) => weights.Select((w, k) => w * feature(k)).Sum();
        var likelihood = choices.Sum(c => Of(c, k => c.Chosen[k]) - Math.Log(Enumerable.Range(0, c.Alternatives[0].Length).Sum(a => Math.Exp(Of(c, k => c.Alternatives[k][a])))));
        return likelihood - weights.Select((w, k) => 0.5 * (w - prior[k]) * (w - prior[k])).Sum();
    }
}
