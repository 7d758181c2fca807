using System.Xml.Linq;
using Underturf.FieldLog;

namespace Underturf.Papers;

/// <summary>Plain symbols of our own: two triangles for a valve (ISO 14617), barred where it is turned by hand, a circle with an arrow where water comes in, a square for a box, a framed plate for the controller, lines by grade.</summary>
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
            ThingKind.IsolationValve => Svg.Group("isolation-valve", Svg.Rect(x - 9, y - 7, 18, 14, ("fill", "#ffffff")), Valve(x, y, 8, edge), Svg.Line([(x, y - 8), (x, y + 8)], false, ("stroke", Inks.Hex(Ink.Ink)), ("stroke-width", "2.4"))),
            ThingKind.PointOfConnection => Svg.Group("point-of-connection", Svg.Circle(x, y, Radius, edge), Svg.Path($"M {Svg.N(x - 4)} {Svg.N(y - 5)} L {Svg.N(x + 6)} {Svg.N(y)} L {Svg.N(x - 4)} {Svg.N(y + 5)} Z", ("fill", Inks.Hex(Ink.Ink)))),
            _ => Svg.Group("valve", Valve(x, y, 8, edge)),
        };
    }

    public static XElement Run(IReadOnlyList<(double X, double Y)> points, Grade grade) => Run(points, grade, "run", Ink.Ink, 1.6);

    /// <summary>Broader and paler than a run of wire.</summary>
    public static XElement Pipe(IReadOnlyList<(double X, double Y)> points, Grade grade) => Run(points, grade, "pipe", Ink.Muted, 4);

    private static XElement Run(IReadOnlyList<(double X, double Y)> points, Grade grade, string kind, Ink ink, double width) => Svg.Line(
        points, false, ("fill", "none"), ("stroke", Inks.Hex(ink)), ("stroke-width", Svg.N(width)), ("stroke-linejoin", "round"), ("stroke-dasharray", Dashes(grade, width)), ("class", $"{kind} {grade}"));

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
