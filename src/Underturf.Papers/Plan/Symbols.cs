using System.Xml.Linq;
using Underturf.FieldLog;

namespace Underturf.Papers;

/// <summary>Plain symbols of our own: two triangles for a valve, a square for a box, a framed plate for the controller, lines by grade.</summary>
internal static class Symbols
{
    public const double Radius = 9;

    public static XElement Draw(ThingKind kind, double x, double y, Grade grade, bool holdsValves)
    {
        var edge = new[] { ("fill", grade == Grade.Unknown ? "none" : "#ffffff"), ("stroke", Inks.Hex(Ink.Ink)), ("stroke-width", "1.6"), ("stroke-dasharray", Dashes(grade, 1)) };
        return kind switch
        {
            ThingKind.Controller => Svg.Group("controller", Svg.Rect(x - 10, y - 8, 20, 16, edge), Svg.Rect(x - 10, y - 8, 20, 5, ("fill", Inks.Hex(Ink.Ink)))),
            ThingKind.Box when holdsValves => Svg.Group("box", Svg.Rect(x - 8, y - 8, 16, 16, edge), Valve(x, y, 5, ("fill", Inks.Hex(Ink.Ink)))),
            ThingKind.Box => Svg.Group("box", Svg.Rect(x - 8, y - 8, 16, 16, edge)),
            _ => Svg.Group("valve", Valve(x, y, 8, edge)),
        };
    }

    public static XElement Run(IReadOnlyList<(double X, double Y)> points, Grade grade) => Svg.Line(
        points, false, ("fill", "none"), ("stroke", Inks.Hex(Ink.Ink)), ("stroke-width", "1.6"), ("stroke-linejoin", "round"), ("stroke-dasharray", Dashes(grade, 1.6)), ("class", $"run {grade}"));

    /// <summary>Solid measured, dashed inferred or estimated, dotted told; a line that is unknown is finely dashed.</summary>
    public static string Dashes(Grade grade, double width) => grade switch
    {
        Grade.Measured => "none",
        Grade.Told => $"{Svg.N(width)} {Svg.N(width * 2.5)}",
        Grade.Unknown => $"{Svg.N(width * 2)} {Svg.N(width * 5)}",
        _ => $"{Svg.N(width * 6)} {Svg.N(width * 3.5)}",
    };

    private static XElement Valve(double x, double y, double half, params IEnumerable<(string Name, string Value)> look) => Svg.Path(
        $"M {Svg.N(x - half)} {Svg.N(y - (half * 0.7))} L {Svg.N(x + half)} {Svg.N(y + (half * 0.7))} V {Svg.N(y - (half * 0.7))} L {Svg.N(x - half)} {Svg.N(y + (half * 0.7))} Z", look);
}
