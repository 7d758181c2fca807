using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

/// <summary>
/// The best allocation of search minutes. Published form: Koopman (1957) and Stone (1975); the values of the first two tests are exact, worked out by water-filling and by a
/// million greedy steps outside this project. All other numbers made up.
/// </summary>
public sealed class SearchPlanTests
{
    private const int Steps = 1_000_000;

    [Theory]
    [InlineData(new[] { 0.6, 0.4 }, 1.0, new[] { 0.70273, 0.29727 }, 0.405724)]
    [InlineData(new[] { 0.5, 0.3, 0.2 }, 1.5, new[] { 0.97571, 0.46488, 0.05941 }, 0.434610)]
    public void Koopman_and_Stone_allocation_of_known_weights(double[] weights, double minutes, double[] allocation, double found)
    {
        var plan = SearchPlan.Of(weights, Ones(weights.Length));
        var shares = plan.Allocate(minutes);
        Assert.All(shares.Zip(allocation), pair => Assert.Equal(pair.Second, pair.First, 5e-6));
        Assert.Equal(found, plan.Curve.Found(minutes), 5e-7);
        Assert.Equal(plan.Curve.Found(minutes), Found(weights, Ones(weights.Length), shares), 1e-14);
    }

    [Fact]
    public void Sharing_evenly_finds_the_less_that_the_source_says() => Assert.Equal(0.393469, Found([0.6, 0.4], [1, 1], [0.5, 0.5]), 5e-7);

    [Fact]
    public void A_million_greedy_steps_come_to_the_same()
    {
        for (var seed = 1UL; seed <= 3; seed++)
        {
            var (weights, rates) = Cells(seed, 12);
            var (plan, minutes) = (SearchPlan.Of(weights, rates), 4.0 * seed);
            var greedy = Greedy(weights, rates, minutes);
            Assert.All(greedy.Zip(plan.Allocate(minutes)), pair => Assert.Equal(pair.First, pair.Second, 2 * minutes / Steps * 12));
            Assert.Equal(Found(weights, rates, greedy), plan.Curve.Found(minutes), 1e-9);
        }
    }

    [Fact]
    public void Searched_cells_are_equally_good_to_search_on_and_the_others_are_no_better() => Each((weights, rates, plan, minutes) =>
    {
        var (shares, rate) = (plan.Allocate(minutes), plan.Curve.RatePerMinute(minutes));
        for (var i = 0; i < weights.Length; i++)
        {
            var here = weights[i] * rates[i] * Math.Exp(-rates[i] * shares[i]);
            Assert.True(shares[i] > 0 ? Math.Abs(here - rate) < 1e-9 * rate : here <= rate * (1 + 1e-9));
        }
    });

    [Fact]
    public void All_minutes_are_shared_out_and_find_what_the_curve_says() => Each((weights, rates, plan, minutes) =>
    {
        var shares = plan.Allocate(minutes);
        Assert.Equal(minutes, shares.Sum(), 1e-9 * (1 + minutes));
        Assert.Equal(Found(weights, rates, shares), plan.Curve.Found(minutes), 1e-12);
    });

    [Fact]
    public void More_minutes_take_nothing_from_any_cell_and_never_find_less() => Each((weights, rates, plan, minutes) =>
    {
        var (less, more, next) = (plan.Allocate(minutes), plan.Allocate(1.3 * minutes), plan.Next(minutes, 0.3 * minutes));
        Assert.All(less.Zip(more), pair => Assert.True(pair.Second >= pair.First));
        Assert.All(less.Zip(next, (a, b) => a + b).Zip(more), pair => Assert.Equal(pair.Second, pair.First, 1e-9));
        Assert.True(plan.Curve.Found(1.3 * minutes) >= plan.Curve.Found(minutes));
        Assert.True(plan.Curve.Found(minutes) <= weights.Sum() + 1e-12);
    });

    [Fact]
    public void No_random_allocation_of_the_same_minutes_finds_more() => Each((weights, rates, plan, minutes) =>
    {
        var chance = new SeededGenerator((ulong)weights.Length);
        double[] drawn = [.. weights.Select(_ => -Math.Log(1 - chance.NextDouble()))];
        var scale = minutes / drawn.Sum();
        Assert.True(Found(weights, rates, [.. drawn.Select(d => d * scale)]) <= plan.Curve.Found(minutes) + 1e-12);
    });

    [Fact]
    public void Minutes_in_vain_leave_the_plan_that_the_chances_left_would_give() => Each((weights, rates, plan, minutes) =>
    {
        var spent = plan.Allocate(minutes);
        var on = SearchPlan.Of(SearchRate.AfterNothing(weights, rates, spent), rates);
        var after = SearchPlan.Of(weights, rates, spent);
        Assert.All(after.Allocate(5).Zip(on.Allocate(5)), pair => Assert.Equal(pair.Second, pair.First, 1e-8));
        Assert.All(after.Allocate(5).Zip(plan.Next(minutes, 5)), pair => Assert.Equal(pair.Second, pair.First, 1e-8));
        Assert.Equal(plan.Curve.Found(minutes + 5) - plan.Curve.Found(minutes), after.Curve.Found(5), 1e-12);
    });

    [Fact]
    public void Mean_minutes_and_minutes_spared_are_the_integrals_of_what_is_missing_and_found() => Each((weights, rates, plan, minutes) =>
    {
        const int Strips = 20_000;
        var width = minutes / Strips;
        var spared = Enumerable.Range(0, Strips).Sum(s => plan.Curve.Found((s + 0.5) * width) * width);
        Assert.Equal(spared, plan.Curve.SparedMinutes(minutes), 1e-6 * minutes);

        const double Long = 1e5;
        Assert.Equal(((plan.Curve.Weight * Long) - plan.Curve.SparedMinutes(Long)) / plan.Curve.Weight, plan.Curve.MeanMinutes, 1e-6);
    });

    [Fact]
    public void Searching_stops_when_a_minute_costs_more_than_it_spares() => Each((weights, rates, plan, minutes) =>
    {
        var worth = 40 * minutes;
        var stop = plan.Curve.StopMinutes(worth, missing: 1);
        double Loss(double until) => until - plan.Curve.SparedMinutes(until) + (worth * (1 - plan.Curve.Found(until)));
        Assert.All(Enumerable.Range(0, 400), k => Assert.True(Loss(stop) <= Loss(k * minutes / 20) + 1e-9));
        Assert.True(stop == 0 || Math.Abs(1 - plan.Curve.Found(stop) - (plan.Curve.RatePerMinute(stop) * worth)) < 1e-9);
    });

    [Fact]
    public void Minutes_until_a_rate_undo_the_rate_after_minutes() => Each((_, _, plan, minutes) =>
        Assert.Equal(minutes, plan.Curve.MinutesUntilRate(plan.Curve.RatePerMinute(minutes)), 1e-9 * (1 + minutes)));

    [Fact]
    public void What_cannot_be_searched_or_cannot_be_there_gets_no_minutes()
    {
        var plan = SearchPlan.Of([0.5, 0, 0.3], [0, 1, 0.1]);
        Assert.Equal([0, 0, 7], plan.Allocate(7));
        Assert.Equal(0.3, plan.Curve.Weight, 1e-12);
        Assert.Equal(0, SearchPlan.Of([0.5], [0]).Curve.Found(10));
        Assert.Equal([0], SearchPlan.Of([0.5], [0]).Allocate(10));
    }

    [Fact]
    public void Cells_that_are_alike_are_shared_evenly_however_many_there_are()
    {
        const int Cells = 160_000;
        double[] weights = [.. Enumerable.Repeat(1.0 / Cells, Cells)];
        var plan = SearchPlan.Of(weights, Ones(Cells));
        Assert.All(plan.Allocate(1), share => Assert.Equal(1.0 / Cells, share, 1e-18));
        Assert.Equal(1 - Math.Exp(-1), plan.Curve.Found(Cells), 1e-10);
        Assert.Equal(Cells, plan.Curve.MeanMinutes, 1e-5);
    }

    [Theory]
    [InlineData(-0.1, 1)]
    [InlineData(double.NaN, 1)]
    [InlineData(0.1, double.PositiveInfinity)]
    public void A_weight_or_rate_that_is_none_is_refused(double weight, double rate) => Assert.Throws<ArgumentException>(() => SearchPlan.Of([weight], [rate]));

    [Fact]
    public void Rates_by_sweep_width_and_by_what_some_minutes_find()
    {
        Assert.Equal(1 - Math.Exp(-1), SearchPlan.Of([1], [SearchRate.PerMinute(0.5, 10, 50)]).Curve.Found(10), 1e-12);
        Assert.Equal(0.8, SearchPlan.Of([1], [SearchRate.PerMinuteWhere(0.8, 3)]).Curve.Found(3), 1e-12);
    }

    private static void Each(Action<double[], double[], SearchPlan, double> claim)
    {
        for (var seed = 1UL; seed <= 40; seed++)
        {
            var (weights, rates) = Cells(seed, 1 + (int)(seed * seed % 60));
            claim(weights, rates, SearchPlan.Of(weights, rates), 0.2 * seed);
        }
    }

    /// <summary>Some cells alike, some that cannot be searched, rates over two decades; one in seven elsewhere.</summary>
    private static (double[] Weights, double[] Rates) Cells(ulong seed, int count)
    {
        var chance = new SeededGenerator(seed);
        double[] weights = [.. Enumerable.Range(0, count).Select(i => i % 5 == 4 ? 0.3 : Math.Pow(chance.NextDouble(), 3))];
        double[] rates = [.. Enumerable.Range(0, count).Select(i => i % 9 == 8 ? 0 : i % 5 == 4 ? 0.2 : Math.Pow(10, -(2 * chance.NextDouble())))];
        var total = weights.Sum() * 7 / 6;
        return ([.. weights.Select(w => w / total)], rates);
    }

    private static double[] Ones(int count) => [.. Enumerable.Repeat(1.0, count)];

    private static double Found(double[] weights, double[] rates, double[] minutes) =>
        Enumerable.Range(0, weights.Length).Sum(i => weights[i] * (1 - Math.Exp(-rates[i] * minutes[i])));

    private static double[] Greedy(double[] weights, double[] rates, double minutes)
    {
        var (spent, step, best) = (new double[weights.Length], minutes / Steps, new PriorityQueue<int, double>());
        best.EnqueueRange(weights.Select((w, i) => (i, -w * rates[i])));
        for (var k = 0; k < Steps; k++)
        {
            var i = best.Dequeue();
            spent[i] += step;
            best.Enqueue(i, -weights[i] * rates[i] * Math.Exp(-rates[i] * spent[i]));
        }

        return spent;
    }
}
