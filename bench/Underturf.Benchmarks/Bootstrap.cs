using Underturf.Numerics;

namespace Underturf.Benchmarks;

/// <summary>How far a figure could have come out otherwise: the items drawn anew, with the same seed each time.</summary>
internal static class Bootstrap
{
    private const int Draws = 2000;

    private const double Tail = 0.025;

    /// <summary>The middle 95 % of the figure over samples drawn with replacement (percentile method; Efron 1979, from memory).</summary>
    public static (double Low, double High) Interval<T>(IReadOnlyList<T> items, Func<IReadOnlyList<T>, double> figure, ulong seed)
    {
        var chance = new SeededGenerator(seed);
        var drawn = Enumerable.Range(0, Draws)
            .Select(_ => figure([.. Enumerable.Range(0, items.Count).Select(_ => items[chance.NextInt(items.Count)])]))
            .Order()
            .ToList();
        return (drawn[(int)(Tail * Draws)], drawn[(int)((1 - Tail) * Draws) - 1]);
    }
}
