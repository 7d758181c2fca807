using Underturf.Planning.Day.Ordering;
using Underturf.Tests.FieldLog;

namespace Underturf.Tests.Planning.Day;

public sealed class DayOrderTests
{
    [Fact]
    public void The_order_saves_as_much_as_trying_every_order_of_every_choice() => Cases.Each(RandomDays.Small, 250, day =>
    {
        var best = new DayOrder().Solve(day);
        Assert.Equal(RandomDays.Most(day), best.Value, 1e-6);
        Assert.True(best.IsBest);
        Assert.Equal(best.Value, day.Value(best.Order)!.Value, 1e-9);
    });

    [Fact]
    public void Broken_off_early_it_still_gives_an_order_and_a_bound_that_holds() => Cases.Each(RandomDays.Small, 150, day =>
    {
        var best = new DayOrder(mostNodes: 2).Solve(day);
        Assert.Equal(best.Value, day.Value(best.Order)!.Value, 1e-9);
        Assert.InRange(RandomDays.Most(day), best.Value - 1e-6, best.Bound + 1e-6);
    });

    /// <summary>
    /// Worked by hand: a day that is never broken off, three jobs of 10 minutes in a row, 5 minutes apart, 5 to the first. The middle one is worth less than the way past it takes, and lies on the way:
    /// 100 + 8 + 100 - (5 + 10 + 5 + 10 + 5 + 10) = 163 with it, 100 + 100 - (5 + 10 + 10 + 10) = 165 without.
    /// </summary>
    [Fact]
    public void What_is_not_worth_its_minutes_is_left_out_though_it_lies_on_the_way()
    {
        var jobs = new[] { 100.0, 8, 100 }.Select(worth => new Errand(10, worth, [], [])).ToList();
        var day = new ErrandDay(jobs, [5, 10, 15], new double[,] { { 0, 5, 10 }, { 5, 0, 5 }, { 10, 5, 0 } }, [0, 0, 0], 480, 1e12);
        var best = new DayOrder().Solve(day);
        Assert.Equal([0, 2], best.Order);
        Assert.Equal(165, best.Value, 1e-6);
    }

    [Fact]
    public void More_jobs_than_there_are_bits_are_a_fault_of_whoever_asks() => Assert.Throws<ArgumentException>(() =>
        new DayOrder().Solve(new ErrandDay([.. Enumerable.Repeat(new Errand(1, 1, [], []), 61)], new double[61], new double[61, 61], new double[61], 10, 10)));
}
