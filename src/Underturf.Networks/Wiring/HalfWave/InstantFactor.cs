using Underturf.Numerics;

namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>
/// The linear part of a network at one instant: each element a conductance g with volts e in series, i = g (v - e), factored once. What a
/// coil remembers, a source drives and a diode bends is all in e.
/// </summary>
internal sealed class InstantFactor
{
    private readonly NodalFactor factor;

    /// <param name="siemens">By element; zero for joints and opens.</param>
    internal InstantFactor(WiringNetwork network, Topology topology, double[] siemens)
    {
        Topology = topology;
        Siemens = siemens;
        From = new int[network.ElementCount];
        To = new int[network.ElementCount];
        var conductances = new double[topology.Pattern.SlotCount];
        for (var e = 0; e < siemens.Length; e++)
        {
            From[e] = topology.Contraction.Merged(network.Layout.A[e]);
            To[e] = topology.Contraction.Merged(network.Layout.B[e]);
            if (topology.ElementSlot[e] >= 0)
            {
                conductances[topology.ElementSlot[e]] += siemens[e];
            }
        }

        factor = new NodalFactor(topology.Pattern, conductances);
    }

    internal Topology Topology { get; }

    internal double[] Siemens { get; }

    /// <summary>Merged node of each element's first end.</summary>
    internal int[] From { get; }

    /// <summary>Merged node of each element's second end.</summary>
    internal int[] To { get; }

    internal int NodeCount => Topology.Contraction.Count;

    /// <summary>Adds what series volts in an element send into its nodes.</summary>
    internal void Push(int element, double seriesVolts, double[] nodes)
    {
        var amperes = Siemens[element] * seriesVolts;
        nodes[From[element]] += amperes;
        nodes[To[element]] -= amperes;
    }

    /// <summary>Amperes into each merged node become volts, in place.</summary>
    internal void Solve(double[] nodes) => factor.Solve(nodes);

    /// <summary>Amperes through an element.</summary>
    internal double Current(int element, double[] nodes, double seriesVolts) =>
        Siemens[element] * (nodes[From[element]] - nodes[To[element]] - seriesVolts);
}
