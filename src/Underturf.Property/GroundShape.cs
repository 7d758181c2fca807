using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>A point, a line or an outline on the ground.</summary>
/// <param name="Points">One for a point; two for a line; three or more for a line or an outline.</param>
/// <param name="Closed">It is an outline: its last point joins its first.</param>
public sealed record GroundShape(IReadOnlyList<Position> Points, bool Closed)
{
    public static GroundShape Point(Position at) => new([at], false);

    public static GroundShape Line(IReadOnlyList<Position> points) => new(points, false);

    /// <summary>As ground is noted: three positions and more are an outline.</summary>
    public static GroundShape Outline(IReadOnlyList<Position> points) => new(points, points.Count > 2);

    /// <summary>Of what lies on the surface: walls and the marks of utilities are lines however many points they have.</summary>
    public static GroundShape Of(GroundFact ground) => ground.What is "wall" or UtilityMark ? Line(ground.Shape) : Outline(ground.Shape);

    /// <summary>What a utility painted on the ground, as the field log names it.</summary>
    public const string UtilityMark = "utility mark";

    /// <summary>Its sides; of a point one of no length.</summary>
    public IEnumerable<(Position From, Position To)> Sides()
    {
        for (var i = 1; i < Points.Count; i++)
        {
            yield return (Points[i - 1], Points[i]);
        }

        if (Closed || Points.Count == 1)
        {
            yield return (Points[^1], Points[0]);
        }
    }

    public double DistanceMetresTo(Position at) => Sides().Min(side => DistanceMetres(side.From, side.To, at));

    /// <summary>Whether an outline holds a point: a ray to the east crosses it an odd number of times. What is no outline holds none.</summary>
    public bool Contains(Position at)
    {
        var inside = false;
        if (Closed)
        {
            foreach (var (from, to) in Sides())
            {
                inside ^= (from.NorthMetres > at.NorthMetres) != (to.NorthMetres > at.NorthMetres)
                    && at.EastMetres < from.EastMetres + ((to.EastMetres - from.EastMetres) * (at.NorthMetres - from.NorthMetres) / (to.NorthMetres - from.NorthMetres));
            }
        }

        return inside;
    }

    /// <summary>The foot of the perpendicular from a point on a side, or the nearer end of the side.</summary>
    public static Position Foot(Position from, Position to, Position at)
    {
        var (east, north) = (to.EastMetres - from.EastMetres, to.NorthMetres - from.NorthMetres);
        var square = (east * east) + (north * north);
        var along = square == 0 ? 0 : Math.Clamp((((at.EastMetres - from.EastMetres) * east) + ((at.NorthMetres - from.NorthMetres) * north)) / square, 0, 1);
        return new Position(from.EastMetres + (along * east), from.NorthMetres + (along * north));
    }

    public static double DistanceMetres(Position from, Position to, Position at) => at.DistanceMetresTo(Foot(from, to, at));
}
