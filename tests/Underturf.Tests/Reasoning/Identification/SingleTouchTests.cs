using Underturf.Simulation;

namespace Underturf.Tests.Reasoning.Identification;

/// <summary>Single touches that never err, against the fewest that can do (exact dynamic programming) and against the information that is asked for.</summary>
public sealed class SingleTouchTests
{
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void Small_bundles_take_as_few_touches_as_any_policy(int ends) =>
        Assert.Equal(new TouchOptimum(ends).Expected(), SingleTouches.Expected(ends), 1e-9);

    [Theory]
    [InlineData(5)]
    [InlineData(9)]
    [InlineData(14)]
    [InlineData(20)]
    public void Bundles_take_three_in_a_hundred_more_than_their_information_at_most(int ends)
    {
        var bits = Enumerable.Range(2, ends - 1).Sum(k => Math.Log2(k));
        Assert.InRange(SingleTouches.Mean(ends, 8, seed: 61), 0.9 * bits, 1.03 * bits);
    }
}
