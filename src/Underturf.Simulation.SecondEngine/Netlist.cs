using System.Text;
using Underturf.Networks.Wiring;

namespace Underturf.Simulation.SecondEngine;

/// <summary>
/// Writes networks beside each other into one netlist, the common of each as ground. Every node is tied to ground by 1e12 ohm, so that cut
/// off parts have a solution; a perfect joint is a source of no volts, because a resistor of zero ohms is not taken for one.
/// </summary>
internal sealed class Netlist
{
    private readonly StringBuilder text = new();
    private int copies;

    internal string Text => text.ToString();

    /// <summary>Adds a network.</summary>
    /// <param name="live">With its sources; else they are left out.</param>
    /// <returns>The copy's number, for <see cref="Volts"/>.</returns>
    internal int Add(WiringNetwork network, int ground, bool live)
    {
        var copy = copies++;
        for (var e = 0; e < network.ElementCount; e++)
        {
            Write(network.ElementAt(e), $"{copy}_{e}", n => Name(copy, n, ground), live);
        }

        for (var node = 0; node < network.NodeCount; node++)
        {
            text.Line($"Rtie{copy}_{node} {Name(copy, node, -1)} 0 1e12");
        }

        text.Line($"Vground{copy} {Name(copy, ground, -1)} 0 0");
        return copy;
    }

    /// <summary>Sends one ampere from ground into a node of a copy.</summary>
    internal void Inject(int copy, int node) => text.Line($"I{copy} 0 {Name(copy, node, -1)} 1");

    internal static string Volts(int copy, int node) => $"v({Name(copy, node, -1)})";

    private static string Name(int copy, int node, int ground) => node == ground ? "0" : $"n{copy}_{node}";

    private void Write(Element element, string id, Func<int, string> name, bool live)
    {
        var (a, b) = (name(element.A), name(element.B));
        if (double.IsPositiveInfinity(element.Ohms) || (element.Kind == ElementKind.Source && !live))
        {
            return;
        }

        if (element.Ohms == 0)
        {
            text.Line($"V{id} {a} {b} 0");
            return;
        }

        if (element.Kind is ElementKind.Coil or ElementKind.Source)
        {
            text.Line(element.Kind == ElementKind.Coil
                ? $"L{id} m{id} {b} {SpiceText.Number(element.Henries)}"
                : $"V{id} m{id} {b} dc 0 ac {SpiceText.Number(element.Volts)}");
            b = $"m{id}";
        }

        text.Line($"R{id} {a} {b} {SpiceText.Number(element.Ohms)}");
    }
}
