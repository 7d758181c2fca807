using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Reasoning.Location;

/// <summary>
/// What was worked out on the way to an answer, for the answer after the next note. It is taken up only where everything that it was made of is
/// the same as before, so that an answer is the same with a memory and without.
/// </summary>
/// <param name="earlier">Of the answer before; of older ones nothing is kept.</param>
internal sealed class LocationMemory(LocationMemory? earlier = null)
{
    private readonly Dictionary<Ingredients, object> before = earlier is null ? [] : earlier.now.Count > 0 ? earlier.now : earlier.before;
    private readonly Dictionary<Ingredients, object> now = [];

    /// <param name="make">A pure function of what it is made of.</param>
    /// <param name="of">Values, or what was kept itself: the same object is the same value. Points and lists go in as a <see cref="PointRow"/>.</param>
    public T Keep<T>(Func<T> make, params object[] of)
        where T : class
    {
        var ingredients = new Ingredients(typeof(T), of);
        if (!now.TryGetValue(ingredients, out var kept))
        {
            now[ingredients] = kept = before.TryGetValue(ingredients, out var same) ? same : make();
        }

        return (T)kept;
    }

    private sealed class Ingredients(Type type, object[] of) : IEquatable<Ingredients>
    {
        private readonly int hash = of.Aggregate(type.GetHashCode(), HashCode.Combine);

        public bool Equals(Ingredients? other) => other is not null && hash == other.hash && Type == other.Type && Of.AsSpan().SequenceEqual(other.Of);

        public override bool Equals(object? obj) => Equals(obj as Ingredients);

        public override int GetHashCode() => hash;

        private Type Type { get; } = type;

        private object[] Of { get; } = of;
    }
}

/// <summary>Points of shapes, compared one by one.</summary>
internal sealed class PointRow : IEquatable<PointRow>
{
    private readonly double[] metres;
    private readonly int hash;

    private PointRow(double[] metres)
    {
        this.metres = metres;
        var code = default(HashCode);
        foreach (var value in metres)
        {
            code.Add(value);
        }

        hash = code.ToHashCode();
    }

    public static PointRow Of(IEnumerable<GroundShape> shapes) => new([.. shapes.SelectMany(s => s.Points.SelectMany(Metres).Append(s.Closed ? double.MaxValue : double.MinValue))]);

    public static PointRow Of(IEnumerable<Position> points) => new([.. points.SelectMany(Metres)]);

    public bool Equals(PointRow? other) => other is not null && hash == other.hash && metres.AsSpan().SequenceEqual(other.metres);

    public override bool Equals(object? obj) => Equals(obj as PointRow);

    public override int GetHashCode() => hash;

    private static double[] Metres(Position at) => [at.EastMetres, at.NorthMetres];
}
