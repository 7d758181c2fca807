using System.Text;
using Underturf.Networks.Wiring;

namespace Underturf.Simulation.SecondEngine;

/// <summary>
/// Writes networks beside each other into one netlist, a node of each as ground. Each part that floats is tied to ground at one node, which
/// carries no current, so that it has a solution. A perfect joint is a source of no volts, because a resistor of zero ohms is not taken for
/// one; those that close a loop of perfect joints are left out, because the engine calls them singular.
/// </summary>
internal sealed class Netlist
{
    /// <summary>An ohmmeter's ampere that finds no path goes through this.</summary>
    internal const double TieOhms = 1e9;

    private readonly StringBuilder text = new();
    private int copies;

    internal string Text => text.ToString();

    /// <summary>Adds a network.</summary>
    /// <param name="live">With its sources; else they are left out.</param>
    /// <returns>The copy's number, for <see cref="Volts"/>.</returns>
    internal int Add(WiringNetwork network, int ground, bool live)
    {
        var copy = copies++;
        var needless = NodeGroups.NeedlessJoints(network);
        for (var e = 0; e < network.ElementCount; e++)
        {
            if (!needless.Contains(e))
            {
                Write(network.ElementAt(e), $"{copy}_{e}", n => Name(copy, n, ground), live);
            }
        }

        foreach (var node in NodeGroups.Floating(network, ground, live))
        {
            text.Line($"Rtie{copy}_{node} {Name(copy, node, -1)} 0 {TieOhms}");
        }

        text.Line($"Vground{copy} {Name(copy, ground, -1)} 0 0");
        return copy;
    }

    /// <summary>Sends one ampere into a node of a copy and takes it out at another.</summary>
    internal void Inject(int copy, int node, int outOf) => text.Line($"I{copy} {Name(copy, outOf, -1)} {Name(copy, node, -1)} 1");

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
