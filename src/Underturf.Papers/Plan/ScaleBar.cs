using System.Globalization;
using System.Xml.Linq;
using Underturf.Quantities;

namespace Underturf.Papers;

/// <summary>A bar of a round length in the property's units, and the arrow to north.</summary>
internal static class ScaleBar
{
    private const double Longest = 240;

    public static XElement Draw(PlanFrame frame, bool us, double x, double y)
    {
        var unit = us ? "ft" : "m";
        var unitsPerOne = frame.UnitsPerMetre * Units.From(1, unit);
        var round = Round(Longest / unitsPerOne);
        var length = round * unitsPerOne;
        return Svg.Group(
            "scale",
            Svg.Rect(x, y, length / 2, 6, ("fill", Inks.Hex(Ink.Ink))),
            Svg.Rect(x, y, length, 6, ("fill", "none"), ("stroke", Inks.Hex(Ink.Ink))),
            Svg.Text(x, y + 22, "0", "small"),
            Svg.Text(x + length, y + 22, $"{round.ToString("0.###", CultureInfo.InvariantCulture)} {unit}", "small", ("text-anchor", "middle")));
    }

    public static XElement North(double x, double y) => Svg.Group(
        "north",
        Svg.Path($"M {Svg.N(x)} {Svg.N(y)} l 9 30 l -9 -7 z", ("fill", Inks.Hex(Ink.Ink))),
        Svg.Path($"M {Svg.N(x)} {Svg.N(y)} l -9 30 l 9 -7 z", ("fill", "none"), ("stroke", Inks.Hex(Ink.Ink))),
        Svg.Text(x, y + 46, "N", "name", ("text-anchor", "middle")));

    /// <summary>The largest of 1, 2, 5 times a power of ten that is not above.</summary>
    private static double Round(double most)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(most)));
        return (most / power) switch { >= 5 => 5 * power, >= 2 => 2 * power, _ => power };
    }
}
