using System.Xml.Linq;
using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Papers;

/// <summary>Protected ground of a tree as a broken ring: inferred, by the local rule, from the diameter of its trunk.</summary>
internal static class RootDrawing
{
    private static readonly (string, string)[] look = [("fill", "#dfe5cf"), ("fill-opacity", "0.35"), ("stroke", "#6f775c"), ("stroke-width", "1.4"), ("stroke-dasharray", "7 5")];

    /// <summary>How far it reaches to each side.</summary>
    public static IEnumerable<Position> Reach(TreeGround tree) => tree.Trunk.Points.SelectMany(p => new[]
    {
        new Position(p.EastMetres - tree.RadiusMetres, p.NorthMetres), new Position(p.EastMetres + tree.RadiusMetres, p.NorthMetres),
        new Position(p.EastMetres, p.NorthMetres - tree.RadiusMetres), new Position(p.EastMetres, p.NorthMetres + tree.RadiusMetres),
    });

    public static IEnumerable<XElement> Of(PlanContent content, PlanFrame frame) =>
        content.Roots.SelectMany(r => r.Trunk.Points.Select(p => frame.At(p)).Select(p => Svg.Circle(p.X, p.Y, r.RadiusMetres * frame.UnitsPerMetre, [.. look, ("class", "roots")])));

    public static XElement Sample(double x, double y) => Svg.Circle(x + 14, y, 9, look);
}
