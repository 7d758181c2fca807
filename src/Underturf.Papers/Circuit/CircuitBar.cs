using System.Xml.Linq;
using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>
/// The volts that reach a coil as a bar: a thin scale from half the supply's volts to all of them, a thick stroke from one standard deviation below to
/// one above, and a tick at what the coil needs to pull in.
/// </summary>
internal static class CircuitBar
{
    private const double Width = 150, Tick = 6, LeastStroke = 2, ScaleFrom = 0.5;

    /// <param name="x">Left end of the scale.</param>
    /// <param name="y">Its height on the sheet.</param>
    public static XElement Of(ValveOnCircuit valve, double openVolts, double x, double y)
    {
        var (from, to, needs) = (At(valve.PullInVolts - valve.PullInVoltsSpread), At(valve.PullInVolts + valve.PullInVoltsSpread), At(valve.NeedsVolts));
        return Svg.Group(
            "volts",
            Svg.Line([(x, y), (x + Width, y)], closed: false, ("stroke", Inks.Hex(Ink.Muted)), ("stroke-width", "1")),
            Svg.Line([(from, y), (Math.Max(to, from + LeastStroke), y)], closed: false, ("stroke", Inks.Hex(Ink.Accent)), ("stroke-width", "6")),
            Svg.Line([(needs, y - Tick), (needs, y + Tick)], closed: false, ("stroke", Inks.Hex(Ink.Ink)), ("stroke-width", "1.5")));

        double At(double volts) => x + (Width * Math.Clamp(((volts / openVolts) - ScaleFrom) / (1 - ScaleFrom), 0, 1));
    }
}
