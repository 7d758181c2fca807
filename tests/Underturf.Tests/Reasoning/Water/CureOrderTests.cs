using Underturf.Reasoning.Water;

namespace Underturf.Tests.Reasoning.Water;

/// <summary>Cures in their best order.</summary>
public sealed class CureOrderTests
{
    private static readonly double[] chances = [0.4, 0.3, 0.2, 0.1];
    private static readonly double[] minutes = [20, 5, 2, 10];

    /// <summary>All 24 orders of A(.4, 20) B(.3, 5) C(.2, 2) D(.1, 10) worked out: C B A D costs 17.0 (Heckerman, Breese and Rommelse, CACM 38(3), 1995, their rule; computed exactly).</summary>
    [Fact]
    public void The_best_of_all_orders_costs_seventeen() => Assert.Equal(17.0, new CureOrder(minutes, 1e6).Loss(chances), 9);

    [Fact]
    public void What_is_dearer_to_mend_than_to_leave_is_left() => Assert.Equal(0.4 * 10, new CureOrder([100], 10).Loss([0.4]), 9);

    [Fact]
    public void What_needs_no_cure_costs_nothing() => Assert.Equal(0, new CureOrder([10], 1000).Loss([0]), 9);

    [Fact]
    public void A_test_that_tells_nothing_is_worth_nothing() => Assert.Equal(0, new CureOrder(minutes, 200).Worth(chances, [[0.3, 0.7], [0.3, 0.7], [0.3, 0.7], [0.3, 0.7], [0.3, 0.7]]), 9);

    [Fact]
    public void A_test_that_tells_everything_leaves_the_right_cure_alone()
    {
        double[][] telling = [[1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 1, 0], [0, 0, 0, 1], [0, 0, 0, 1]];
        Assert.Equal(17.0 - ((0.4 * 20) + (0.3 * 5) + (0.2 * 2) + (0.1 * 10)), new CureOrder(minutes, 1e6).Worth(chances, telling), 9);
    }
}
