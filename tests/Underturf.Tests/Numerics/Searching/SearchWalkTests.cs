using Underturf.Numerics;

namespace Underturf.Tests.Numerics;

/// <summary>A search with ways between the stops. Numbers made up; the yardstick is an exact dynamic program over bouts.</summary>
public sealed class SearchWalkTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(2, 30, 14)]
    [InlineData(4, 30, 8)]
    [InlineData(6, 8, 5)]
    [InlineData(9, 3, 3)]
    public void Walks_are_nearly_as_good_as_the_exact_program_over_all_orders_of_bouts(int stops, int cases, int bouts)
    {
        var (ratios, visits, bounds) = (new List<double>(), new List<int>(), new List<double>());
        for (var seed = 1UL; seed <= (ulong)cases; seed++)
        {
            var errand = Random(stops, seed);
            var walk = SearchWalk.Best(errand);
            var exact = Exact(errand, walk, bouts);
            ratios.Add(walk.LossMinutes / exact.LossMinutes);
            visits.Add(exact.Visits.Count);
            bounds.Add(walk.LossMinutes / errand.BoundMinutes());
        }

        output.WriteLine($"{stops} stops, {bouts} bouts: mean {ratios.Average():F4}, largest {ratios.Max():F4}, {visits.Average():F1} visits, over the bound {bounds.Average():F3}");
        Assert.True(visits.Average() > stops, "the cases ask for too few visits to tell anything");
        Assert.True(ratios.Min() >= 1 - 1e-9 || stops > 6, "the program does not hold the walk");
        Assert.True(ratios.Average() <= 1.005, $"mean {ratios.Average():F4}");
        Assert.True(ratios.Max() <= 1.02, $"largest {ratios.Max():F4}");
    }

    [Fact]
    public void No_walk_is_better_than_searching_without_ways_and_one_stop_underfoot_is_just_that()
    {
        for (var seed = 1UL; seed <= 30; seed++)
        {
            var errand = Random(1 + (int)(seed % 12), seed);
            var walk = SearchWalk.Best(errand);
            Assert.InRange(walk.LossMinutes, errand.BoundMinutes(), errand.WorthMinutes);
            Assert.Equal(walk.LossMinutes, walk.ExpectedMinutes + (errand.WorthMinutes * (1 - walk.Found)), 1e-9 * walk.LossMinutes);

            var here = new SearchErrand([errand.Stop(0)], [0], [0], errand.WorthMinutes);
            Assert.Equal(here.BoundMinutes(), SearchWalk.Best(here).LossMinutes, 1e-6);
        }
    }

    [Fact]
    public void A_dearer_find_is_searched_for_longer_and_more_minutes_on_the_way_cost_more()
    {
        for (var seed = 1UL; seed <= 10; seed++)
        {
            var (errand, dearer, slower) = (Random(6, seed), Random(6, seed, worth: 2), Random(6, seed, metresPerMinute: 20));
            Assert.True(SearchWalk.Best(dearer).Found > SearchWalk.Best(errand).Found);
            Assert.True(SearchWalk.Best(slower).LossMinutes > SearchWalk.Best(errand).LossMinutes);
        }
    }

    [Fact]
    public void Nobody_sets_out_for_what_is_not_worth_it()
    {
        var far = new SearchErrand([SearchPlan.Of([0.1], [1]).Curve], [100], [0], worthMinutes: 30);
        var walk = SearchWalk.Best(far);
        Assert.Empty(walk.Visits);
        Assert.Equal(30, walk.LossMinutes);
    }

    [Fact]
    public void A_little_close_by_is_searched_before_more_far_off()
    {
        var (little, more) = (SearchPlan.Of([0.2], [2]).Curve, SearchPlan.Of([0.7], [2]).Curve);
        var walk = SearchWalk.Best(new SearchErrand([more, little], [30, 1], [0, 30, 30, 0], worthMinutes: 400));
        Assert.Equal([1, 0], walk.Visits.Select(visit => visit.Stop));
        Assert.Equal(0, SearchWalk.Best(new SearchErrand([more, little], [3, 1], [0, 4, 4, 0], worthMinutes: 400)).Visits[0].Stop);
    }

    [Fact]
    public void The_same_errand_gives_the_same_walk_again()
    {
        var (first, second) = (SearchWalk.Best(Random(9, 5)), SearchWalk.Best(Random(9, 5)));
        Assert.Equal(first.Visits, second.Visits);
    }

    [Fact]
    public void An_errand_that_cannot_be_is_refused()
    {
        var curve = SearchPlan.Of([0.7], [1]).Curve;
        Assert.Throws<ArgumentException>(() => new SearchErrand([curve], [], [0], 10));
        Assert.Throws<ArgumentException>(() => new SearchErrand([curve], [-1], [0], 10));
        Assert.Throws<ArgumentException>(() => new SearchErrand([curve, curve], [1, 1], [0, 1, 1, 0], 10));
    }

    /// <summary>
    /// Bouts that the walk itself could be made of, so that the program can only be better, and others beside them; then the same round the best that the program found.
    /// </summary>
    private static SearchWalk Exact(SearchErrand errand, SearchWalk walk, int bouts)
    {
        var best = walk;
        foreach (var near in new[] { 0.4, 0.15 })
        {
            var found = new BoutProgram(errand, [.. Enumerable.Range(0, errand.Count).Select(stop => Levels(best, stop, bouts, near))]).Best();
            best = found.LossMinutes < best.LossMinutes ? found : best;
        }

        return best;
    }

    /// <summary>Minutes at a stop after each of its visits, then a little less and more than after the last, then halves of the bouts, as many as there may be.</summary>
    private static double[] Levels(SearchWalk walk, int stop, int most, double near)
    {
        var (levels, sum) = (new List<double>(), 0.0);
        foreach (var visit in walk.Visits.Where(visit => visit.Stop == stop))
        {
            levels.Add(sum += visit.EffortMinutes);
        }

        if (levels.Count == 0)
        {
            return [.. new[] { 2.0, 5, 10 }.Take(most)];
        }

        double[] halves = [.. levels.Select((until, k) => (until + (k == 0 ? 0 : levels[k - 1])) / 2)];
        return [.. levels.TakeLast(most).Concat([sum * (1 + near), sum * (1 - near), .. halves]).Take(most).Order()];
    }

    private static SearchErrand Random(int stops, ulong seed, double worth = 1, double metresPerMinute = 40)
    {
        var chance = new SeededGenerator(seed).Fork("walk");
        double[] weights = [.. Enumerable.Range(0, stops).Select(_ => 0.02 + Math.Pow(chance.NextDouble(), 2))];
        var all = weights.Sum() / (0.75 + (0.24 * chance.NextDouble()));
        var side = Math.Pow(10, 1 + (1.7 * chance.NextDouble()));
        var made = weights.Select(weight => Stop(chance, weight / all, side)).ToList();
        return SearchErrand.InPlane(made, 0, 0, metresPerMinute, 60 * worth * Math.Pow(10, chance.NextDouble()));
    }

    private static SearchStop Stop(SeededGenerator chance, double weight, double side)
    {
        double[] parts = [.. Enumerable.Range(0, 30).Select(_ => Math.Pow(chance.NextDouble(), 3))];
        double[] rates = [.. parts.Select(_ => 5 + (5 * chance.NextDouble()))];
        var plan = SearchPlan.Of([.. parts.Select(part => part * weight / parts.Sum())], rates);
        return new SearchStop(side * chance.NextDouble(), side * chance.NextDouble(), [.. Enumerable.Range(0, 30)], plan);
    }
}
