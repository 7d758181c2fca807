using System.Xml.Linq;
using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Papers;

/// <summary>Taped distances as thin lines from mark to thing; where nobody knows the place of the thing, the circle on which it lies.</summary>
internal static class TieDrawing
{
    public static IEnumerable<XElement> Of(PlanContent content, PlanFrame frame) => content.Ties.Select(tie => Draw(tie, content, frame));

    /// <summary>A sample for the legend.</summary>
    public static XElement Sample(double x, double y) => Svg.Line([(x, y), (x + 28, y)], false, Look(Grade.Measured));

    private static XElement Draw(Tie tie, PlanContent content, PlanFrame frame)
    {
        var from = frame.At(tie.From!.Value);
        return content.Things.FirstOrDefault(thing => thing.Id == tie.Thing) is { } thing
            ? Svg.Line([from, frame.At(thing.At)], false, Look(tie.Grade))
            : Svg.Circle(from.X, from.Y, tie.Distance.Metres * frame.UnitsPerMetre, Look(tie.Grade));
    }

    private static (string Name, string Value)[] Look(Grade grade) =>
        [("fill", "none"), ("stroke", Inks.Hex(Ink.Muted)), ("stroke-width", "0.9"), ("stroke-dasharray", Symbols.Dashes(grade, 0.9)), ("class", "tie")];
}
