using System.Xml.Linq;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>Taped distances as thin lines from mark to thing; where nobody knows the place of the thing, the circle on which it lies.</summary>
internal static class TieDrawing
{
    public static IEnumerable<XElement> Of(PlanContent content, PlanFrame frame) =>
        content.Tied.SelectMany(place => place.Spots).Select(spot => Ellipse(spot, frame)).Concat(content.Ties.Select(tie => Draw(tie, content, frame)));

    /// <summary>A sample for the legend.</summary>
    public static XElement Sample(double x, double y) => Svg.Line([(x, y), (x + 28, y)], false, Look(Grade.Measured));

    /// <summary>A sample of an ellipse for the legend.</summary>
    public static XElement EllipseSample(double x, double y) => Ellipse([.. Enumerable.Range(0, 24).Select(i => Math.Tau * i / 24).Select(turn => (x + 14 + (13 * Math.Cos(turn)), y + (6 * Math.Sin(turn))))]);

    /// <summary>In which a thing lies 95 times in 100.</summary>
    private static XElement Ellipse(TiedSpot spot, PlanFrame frame) => Ellipse([.. spot.Edge().Select(frame.At)]);

    private static XElement Ellipse(IReadOnlyList<(double X, double Y)> edge) =>
        Svg.Line(edge, true, ("fill", Inks.Hex(Ink.Muted)), ("fill-opacity", "0.16"), ("stroke", Inks.Hex(Ink.Muted)), ("stroke-width", "1.2"), ("stroke-dasharray", "3 2"), ("class", "spread"));

    private static XElement Draw(Tie tie, PlanContent content, PlanFrame frame)
    {
        var from = frame.At(tie.From!.Value);
        return content.Things.FirstOrDefault(thing => thing.Id == tie.Thing) is { } thing
            ? Svg.Line([from, frame.At(thing.At)], false, Look(tie.Grade))
            : Svg.Circle(from.X, from.Y, tie.Distance.Metres * frame.UnitsPerMetre, Look(tie.Grade));
    }

    public static (string Name, string Value)[] Look(Grade grade) =>
        [("fill", "none"), ("stroke", Inks.Hex(Ink.Muted)), ("stroke-width", "0.9"), ("stroke-dasharray", Symbols.Dashes(grade, 0.9)), ("class", "tie")];
}
