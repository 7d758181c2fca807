using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Reasoning;

/// <summary>What a tape cannot go through: buildings, and walls that it would have to cross.</summary>
internal sealed class Sight(PropertyView view)
{
    private const int Samples = 80;

    private readonly List<(string Id, GroundFact Fact)> solid =
        [.. view.Ground.Where(g => g.Value.Shape.Count > 1 && g.Value.What is "building" or "wall").Select(g => (g.Key, g.Value))];

    /// <summary>The id of what is in the way for more than a little; nothing where it is clear.</summary>
    /// <param name="little">Metres that may be in the way, by what drawing and taping may be off.</param>
    public string? Blocked(Position from, Position to, double little) =>
        solid.FirstOrDefault(s => s.Fact.What == "building" && s.Fact.Shape.Count > 2 ? Inside(s.Fact.Shape, from, to) > little : Crosses(s.Fact.Shape, from, to, little)).Id;

    /// <summary>Metres of a line that lie in an outline.</summary>
    private static double Inside(IReadOnlyList<Position> outline, Position from, Position to)
    {
        var (building, inside) = (GroundShape.Outline(outline), 0);
        for (var k = 0; k < Samples; k++)
        {
            inside += building.Contains(Between(from, to, (k + 0.5) / Samples)) ? 1 : 0;
        }

        return inside * from.DistanceMetresTo(to) / Samples;
    }

    /// <summary>Does a line go through a wall, further than a little from both its ends?</summary>
    private static bool Crosses(IReadOnlyList<Position> wall, Position from, Position to, double little)
    {
        var (length, x, y) = (from.DistanceMetresTo(to), to.EastMetres - from.EastMetres, to.NorthMetres - from.NorthMetres);
        for (var k = 1; k < wall.Count; k++)
        {
            var (a, wx, wy) = (wall[k - 1], wall[k].EastMetres - wall[k - 1].EastMetres, wall[k].NorthMetres - wall[k - 1].NorthMetres);
            var cross = (x * wy) - (y * wx);
            var (ax, ay) = (a.EastMetres - from.EastMetres, a.NorthMetres - from.NorthMetres);
            var (along, on) = (((ax * wy) - (ay * wx)) / cross, ((ax * y) - (ay * x)) / cross);
            if (on is > 0 and < 1 && along * length > little && (1 - along) * length > little)
            {
                return true;
            }
        }

        return false;
    }

    private static Position Between(Position a, Position b, double share) =>
        new(a.EastMetres + ((b.EastMetres - a.EastMetres) * share), a.NorthMetres + ((b.NorthMetres - a.NorthMetres) * share));
}
