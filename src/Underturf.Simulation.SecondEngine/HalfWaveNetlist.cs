using System.Text;
using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;

namespace Underturf.Simulation.SecondEngine;

/// <summary>
/// Writes a network with diodes for a transient run: a source of no volts in every metered element as its ammeter, sources as sines, diodes
/// without charge (with it the run takes forty times as long for the same answer). Gear's rule, because the engine's own trapezoidal rule rings for
/// the rest of the period where a diode stops a coil's current, and with it the rms volts there are 3 % too high.
/// </summary>
internal static class HalfWaveNetlist
{
    /// <summary>For a property: only some amperes, and a shunt at every node.</summary>
    /// <remarks>
    /// Without the shunt the engine gives up ("timestep too small") at an instant at which a diode stops a coil's current, in some of these
    /// networks. It carries nanoamperes, and decides the volts of what floats between diodes that stand: do not compare those.
    /// </remarks>
    internal static string WriteProperty(DiodeNetwork network, int ground, double hertz, IReadOnlyCollection<int> metered) =>
        ".options rshunt=1e10\n" + Write(network, ground, hertz, metered);

    /// <param name="metered">Elements whose amperes are asked for; none for all of them.</param>
    internal static string Write(DiodeNetwork network, int ground, double hertz = 60, IReadOnlyCollection<int>? metered = null)
    {
        var text = new StringBuilder(".options method=gear\n");
        var wiring = network.Wiring;
        for (var e = 0; e < wiring.ElementCount; e++)
        {
            var element = wiring.ElementAt(e);
            if (!double.IsPositiveInfinity(element.Ohms))
            {
                var (a, b) = (Name(element.A, ground), Name(element.B, ground));
                if (metered is null || metered.Contains(e))
                {
                    text.Line($"Vm{e} {a} m{e} 0");
                    a = $"m{e}";
                }

                var diode = element.Ohms == 0 ? default : network.Diodes.FirstOrDefault(d => d.Element == e);
                text.Append(diode == default ? Linear(element, e, (a, b), hertz) : Junction(diode, element, (a, b)));
            }
        }

        for (var node = 0; node < wiring.NodeCount; node++)
        {
            text.Line($"Rtie{node} {Name(node, ground)} 0 1e12");
        }

        return text.ToString();
    }

    internal static string Volts(int node) => $"v(n{node})";

    internal static string Amperes(int element) => $"i(vm{element})";

    internal static string Name(int node, int ground) => node == ground ? "0" : $"n{node}";

    private static string Linear(Element element, int e, (string A, string B) ends, double hertz)
    {
        var volts = SpiceText.Number(Math.Sqrt(2) * element.Volts);
        return (element.Kind, element.Ohms) switch
        {
            (ElementKind.Source, 0) => $"V{e} {ends.A} {ends.B} SIN(0 {volts} {hertz})\n",
            (ElementKind.Source, _) => $"V{e} {ends.A} r{e} SIN(0 {volts} {hertz})\nR{e} r{e} {ends.B} {SpiceText.Number(element.Ohms)}\n",
            (_, 0) => $"V{e} {ends.A} {ends.B} 0\n",
            (ElementKind.Coil, _) => $"L{e} {ends.A} r{e} {SpiceText.Number(element.Henries)}\nR{e} r{e} {ends.B} {SpiceText.Number(element.Ohms)}\n",
            _ => $"R{e} {ends.A} {ends.B} {SpiceText.Number(element.Ohms)}\n",
        };
    }

    private static string Junction(Diode diode, Element element, (string A, string B) ends)
    {
        var celsius = SpiceText.Number(diode.Junction.Kelvins - 273.15);
        var (saturation, emission) = (SpiceText.Number(diode.Junction.SaturationAmperes), SpiceText.Number(diode.Junction.EmissionFactor));
        return $".model x{diode.Element} d(is={saturation} n={emission} rs={SpiceText.Number(element.Ohms)} tnom={celsius})\n"
            + $"D{diode.Element} {ends.A} {ends.B} x{diode.Element} temp={celsius}\n";
    }
}
