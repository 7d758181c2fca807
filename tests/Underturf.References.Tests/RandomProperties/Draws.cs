using Underturf.Numerics;

namespace Underturf.References.Tests.RandomProperties;

/// <summary>Choices of a seeded generator.</summary>
internal sealed class Draws(SeededGenerator random)
{
    internal bool OneIn(int count) => random.NextInt(count) == 0;

    internal int Below(int count) => random.NextInt(count);

    internal double Between(double least, double most) => least + ((most - least) * random.NextDouble());

    /// <summary>Evenly in the logarithm, from ten to the one power to ten to the other.</summary>
    internal double Decades(double least, double most) => Math.Pow(10, Between(least, most));

    internal T Of<T>(IReadOnlyList<T> choices) => choices[random.NextInt(choices.Count)];

    /// <summary>Ohms of a joint made by hand: now and then none at all.</summary>
    internal double SpliceOhms() => OneIn(4) ? 0 : Between(0.005, 0.05);
}
