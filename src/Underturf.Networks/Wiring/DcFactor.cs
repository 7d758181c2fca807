using Underturf.Numerics;

namespace Underturf.Networks.Wiring;

/// <summary>The direct-current equations of one network, factored once for all pairs of nodes.</summary>
internal sealed class DcFactor
{
    /// <summary>Above this share of the injected current the imbalance is worth a round of refinement.</summary>
    private const double Balanced = 1e-13;
    private const int MostRounds = 4;

    private readonly WiringNetwork network;
    private readonly Topology topology;
    private readonly NodalFactor factor;

    internal DcFactor(WiringNetwork network)
    {
        this.network = network;
        topology = network.Topologies.Direct(network);
        var siemens = new double[topology.Pattern.SlotCount];
        var slots = topology.ElementSlot;
        for (var e = 0; e < slots.Length; e++)
        {
            if (slots[e] >= 0)
            {
                siemens[slots[e]] += 1 / network.Ohmic[e];
            }
        }

        factor = new NodalFactor(topology.Pattern, siemens);
    }

    internal OhmsReading Read(int a, int b)
    {
        if (!topology.SamePart(a, b))
        {
            return OhmsReading.Open(network);
        }

        var from = topology.Contraction.Merged(a);
        var to = topology.Contraction.Merged(b);
        var currents = new double[network.ElementCount];
        var ohms = 0.0;
        var residual = Imbalance(currents, from, to, out var left);
        for (var round = 0; round <= MostRounds && (round == 0 || left > Balanced); round++)
        {
            factor.Solve(residual);
            Flow(residual, currents);
            ohms += residual[from] - residual[to];
            residual = Imbalance(currents, from, to, out left);
        }

        FillJoints(currents, a, b);
        return new OhmsReading(network, ohms, left, currents);
    }

    /// <summary>Adds the currents that the potentials drive.</summary>
    private void Flow(double[] volts, double[] currents)
    {
        var slots = topology.ElementSlot;
        for (var e = 0; e < slots.Length; e++)
        {
            if (slots[e] >= 0)
            {
                var drop = volts[topology.Contraction.Merged(network.Layout.A[e])] - volts[topology.Contraction.Merged(network.Layout.B[e])];
                currents[e] += drop / network.Ohmic[e];
            }
        }
    }

    /// <summary>What one ampere into a node and out of another leaves unbalanced at each node.</summary>
    private double[] Imbalance(double[] currents, int from, int to, out double most)
    {
        var residual = new double[topology.Contraction.Count];
        residual[from] += 1;
        residual[to] -= 1;
        var slots = topology.ElementSlot;
        for (var e = 0; e < slots.Length; e++)
        {
            if (slots[e] >= 0)
            {
                residual[topology.Contraction.Merged(network.Layout.A[e])] -= currents[e];
                residual[topology.Contraction.Merged(network.Layout.B[e])] += currents[e];
            }
        }

        most = 0;
        foreach (var amperes in residual)
        {
            most = Math.Max(most, Math.Abs(amperes));
        }

        return residual;
    }

    private void FillJoints(double[] currents, int a, int b)
    {
        if (topology.Contraction.Joints.Count == 0)
        {
            return;
        }

        var leaving = new double[network.NodeCount];
        leaving[a] -= 1;
        leaving[b] += 1;
        for (var e = 0; e < currents.Length; e++)
        {
            leaving[network.Layout.A[e]] += currents[e];
            leaving[network.Layout.B[e]] -= currents[e];
        }

        JointCurrents.Fill(network, topology.Contraction.Joints, leaving, currents);
    }
}
