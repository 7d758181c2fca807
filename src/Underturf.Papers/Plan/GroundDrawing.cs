using System.Xml.Linq;
using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Papers;

/// <summary>What lies on the surface, each kind with a fill of its own that also prints in one colour.</summary>
internal static class GroundDrawing
{
    private const double LeastTrunk = 4, DefaultTrunkMetres = 0.3;

    private static readonly (string Kind, string Ground, string Pattern)[] fills =
    [
        ("lawn", "#eef1e4", "M2 9 v-4 M8 4 v-3"),
        ("bed", "#f5efe2", "M2 3 h1.5 M7 8 h1.5"),
        ("hardscape", "#f0eeea", "M0 10 L10 0"),
        ("building", "#e3ded3", "M0 10 L10 0 M0 0 L10 10"),
        ("water", "#e6eef0", "M0 5 q2.5 -3 5 0 t5 0"),
        ("other", "#f7f5f0", "M5 5 h0.8"),
    ];

    public static XElement Defs() => new(
        Svg.Space + "defs",
        fills.Select(f => new XElement(
            Svg.Space + "pattern",
            new XAttribute("id", $"fill-{f.Kind}"),
            new XAttribute("width", 10),
            new XAttribute("height", 10),
            new XAttribute("patternUnits", "userSpaceOnUse"),
            Svg.Rect(0, 0, 10, 10, ("fill", f.Ground)),
            Svg.Path(f.Pattern, ("fill", "none"), ("stroke", "#a9a189"), ("stroke-width", "0.7")))));

    public static XElement Draw(GroundFact ground, PlanFrame frame)
    {
        var points = ground.Shape.Select(frame.At).ToList();
        var kind = Kind(ground);
        if (points.Count == 1)
        {
            var radius = kind == "tree" ? Math.Max(LeastTrunk, (ground.Trunk?.Metres ?? DefaultTrunkMetres) / 2 * frame.UnitsPerMetre) : LeastTrunk;
            return Mark(kind, points[0].X, points[0].Y, Math.Min(radius, 60));
        }

        if (kind == GroundShape.UtilityMark)
        {
            return UtilityLine(points);
        }

        return points.Count == 2 || kind is "wall" or "tree"
            ? Svg.Line(points, false, ("fill", "none"), ("stroke", "#8c8470"), ("stroke-width", kind == "wall" ? "4" : "8"), ("stroke-opacity", kind == "wall" ? "1" : "0.35"))
            : Svg.Line(points, true, ("fill", $"url(#fill-{kind})"), ("stroke", "#a9a189"), ("stroke-width", "1"));
    }

    /// <summary>A sample of the kind for the legend.</summary>
    public static XElement Sample(string kind, double x, double y) => kind switch
    {
        "tree" => Mark(kind, x + 14, y, 6),
        "wall" => Svg.Line([(x, y), (x + 28, y)], false, ("stroke", "#8c8470"), ("stroke-width", "4")),
        GroundShape.UtilityMark => UtilityLine([(x, y), (x + 28, y)]),
        _ => Svg.Rect(x, y - 8, 28, 16, ("fill", $"url(#fill-{kind})"), ("stroke", "#a9a189")),
    };

    public static string Kind(GroundFact ground) =>
        ground.What is "tree" or "wall" or GroundShape.UtilityMark || fills.Any(f => f.Kind == ground.What) ? ground.What : "other";

    public static bool IsLine(GroundFact ground) => ground.Shape.Count > 1 && !GroundShape.Of(ground).Closed;

    /// <summary>Where its name goes: the middle of its outline or line.</summary>
    public static (double X, double Y) Middle(GroundFact ground, PlanFrame frame)
    {
        var points = ground.Shape.Select(frame.At).ToList();
        return points.Count > 2 && !IsLine(ground)
            ? ((points.Min(p => p.X) + points.Max(p => p.X)) / 2, (points.Min(p => p.Y) + points.Max(p => p.Y)) / 2)
            : points.Count == 2 ? ((points[0].X + points[1].X) / 2, (points[0].Y + points[1].Y) / 2)
            : points[points.Count / 2];
    }

    /// <summary>Dash and two dots, as no grade is drawn.</summary>
    private static XElement UtilityLine(IReadOnlyList<(double X, double Y)> points) =>
        Svg.Line(points, false, ("fill", "none"), ("stroke", "#4a4436"), ("stroke-width", "1.8"), ("stroke-dasharray", "16 4 2 4 2 4"));

    private static XElement Mark(string kind, double x, double y, double radius) => Svg.Group(
        kind,
        Svg.Circle(x, y, radius, ("fill", kind == "tree" ? "#dfe5cf" : "#e3ded3"), ("stroke", "#6f775c"), ("stroke-width", "1.4")),
        Svg.Circle(x, y, 1.2, ("fill", "#6f775c")));
}
