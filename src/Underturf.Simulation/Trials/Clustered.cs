using Underturf.Numerics;

namespace Underturf.Simulation.Trials;

/// <summary>Intervals of a figure over properties: whole properties are drawn again, because what is measured in one hangs together (bootstrap, percentiles).</summary>
public static class Clustered
{
    private const int Draws = 2000;
    private const ulong Seed = 95;

    /// <summary>95 % interval of a figure of many properties.</summary>
    public static (double Low, double High) Interval<T>(IReadOnlyList<T> properties, Func<IReadOnlyList<T>, double> figure)
    {
        var chance = new SeededGenerator(Seed).Fork("bootstrap");
        var figures = Enumerable.Range(0, Draws)
            .Select(_ => figure([.. Enumerable.Range(0, properties.Count).Select(_ => properties[chance.NextInt(properties.Count)])]))
            .Where(double.IsFinite)
            .Order()
            .ToList();
        return figures.Count == 0 ? (double.NaN, double.NaN) : (figures[(int)(0.025 * figures.Count)], figures[(int)Math.Min(figures.Count - 1, 0.975 * figures.Count)]);
    }
}
