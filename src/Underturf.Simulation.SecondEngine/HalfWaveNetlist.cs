using System.Text;
using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;

namespace Underturf.Simulation.SecondEngine;

/// <summary>
/// Writes a network with diodes for a transient run: a source of no volts in an element as its ammeter, sources as sines, diodes without
/// charge (with it the run takes forty times as long for the same answer). Gear's rule, because the engine's own trapezoidal rule rings for
/// the rest of the period where a diode stops a coil's current, and with it the rms volts there are 3 % too high.
/// </summary>
internal static class HalfWaveNetlist
{
    /// <param name="ammeters">Elements whose current is asked for; nothing for all.</param>
    internal static string Write(DiodeNetwork network, int ground, double hertz = 60, Func<int, bool>? ammeters = null)
    {
        var text = new StringBuilder(".options method=gear\n");
        var wiring = network.Wiring;
        for (var e = 0; e < wiring.ElementCount; e++)
        {
            var element = wiring.ElementAt(e);
            if (!double.IsPositiveInfinity(element.Ohms))
            {
                var (a, b) = (Name(element.A, ground), Name(element.B, ground));
                if (ammeters?.Invoke(e) ?? true)
                {
                    text.Line($"Vm{e} {a} m{e} 0");
                    a = $"m{e}";
                }

                var diode = element.Ohms == 0 ? default : network.Diodes.FirstOrDefault(d => d.Element == e);
                text.Append(diode == default ? Linear(element, e, a, b, hertz) : Junction(diode, element, a, b));
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

    private static string Linear(Element element, int e, string a, string b, double hertz)
    {
        var volts = SpiceText.Number(Math.Sqrt(2) * element.Volts);
        return (element.Kind, element.Ohms) switch
        {
            (ElementKind.Source, 0) => $"V{e} {a} {b} SIN(0 {volts} {hertz})\n",
            (ElementKind.Source, _) => $"V{e} {a} r{e} SIN(0 {volts} {hertz})\nR{e} r{e} {b} {SpiceText.Number(element.Ohms)}\n",
            (_, 0) => $"V{e} {a} {b} 0\n",
            (ElementKind.Coil, _) => $"L{e} {a} r{e} {SpiceText.Number(element.Henries)}\nR{e} r{e} {b} {SpiceText.Number(element.Ohms)}\n",
            _ => $"R{e} {a} {b} {SpiceText.Number(element.Ohms)}\n",
        };
    }

    private static string Junction(Diode diode, Element element, string a, string b)
    {
        var celsius = SpiceText.Number(diode.Junction.Kelvins - 273.15);
        var (saturation, emission) = (SpiceText.Number(diode.Junction.SaturationAmperes), SpiceText.Number(diode.Junction.EmissionFactor));
        return $".model x{diode.Element} d(is={saturation} n={emission} rs={SpiceText.Number(element.Ohms)} tnom={celsius})\n"
            + $"D{diode.Element} {a} {b} x{diode.Element} temp={celsius}\n";
    }
}
