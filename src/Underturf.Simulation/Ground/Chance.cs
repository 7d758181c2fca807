using Underturf.Numerics;

namespace Underturf.Simulation;

/// <summary>Short ways to draw.</summary>
internal static class Chance
{
    /// <summary>Student's t beyond this is taken for it: a note worse than that nobody believes.</summary>
    private const double Most = 4;

    public static double Between(this SeededGenerator chance, double least, double most) => least + ((most - least) * chance.NextDouble());

    public static bool Happens(this SeededGenerator chance, double share) => chance.NextDouble() < share;

    public static T Pick<T>(this SeededGenerator chance, IReadOnlyList<T> list) => list[chance.NextInt(list.Count)];

    public static T PickWeighted<T>(this SeededGenerator chance, IReadOnlyList<(T Item, double Weight)> list) => list[chance.Choose([.. list.Select(l => l.Weight)])].Item;

    /// <summary>An error with heavier tails than a normal one, in spreads.</summary>
    public static double HeavyTailed(this SeededGenerator chance) => Math.Clamp(chance.NextStudentT(3), -Most, Most);
}
