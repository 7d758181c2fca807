using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>A network in the steady state. Ask for voltages between nodes: no node is earth.</summary>
public sealed class AcSolution
{
    private readonly AcFactor factor;
    private readonly AcState state;

    internal AcSolution(AcFactor factor, AcState state)
    {
        this.factor = factor;
        this.state = state;
    }

    /// <summary>Largest imbalance of currents at a node.</summary>
    public double KirchhoffResidualAmperes => state.ResidualAmperes;

    /// <summary>Whether an open cuts the node off from every source: no current flows there, and it stands at no known voltage.</summary>
    public bool IsFloating(int node) => !factor.Topology.IsDriven(node);

    /// <summary>Volts of node a over node b.</summary>
    /// <returns>The phasor, or a problem where an open separates the two.</returns>
    public Outcome<Phasor> VoltageBetween(int a, int b)
    {
        if ((WiringCheck.Known(factor.Network, a) ?? WiringCheck.Known(factor.Network, b)) is { } unknown)
        {
            return unknown;
        }

        if (!factor.Topology.SamePart(a, b))
        {
            return Undetermined.Between(factor.Network, a, b);
        }

        var joints = factor.Topology.Contraction;
        var (p, q) = (joints.Merged(a), joints.Merged(b));
        var offset = joints.Offset(a) - joints.Offset(b);
        return new Phasor(state.VoltsRe[p] - state.VoltsRe[q] + offset, state.VoltsIm[p] - state.VoltsIm[q]);
    }

    /// <summary>Amperes from A through the element to B. A source that delivers has a negative one.</summary>
    /// <returns>The phasor, or a problem for a perfect joint in a loop of perfect joints.</returns>
    public Outcome<Phasor> Current(int element)
    {
        var current = state.Current(element);
        return double.IsNaN(current.Real) ? Undetermined.JointInLoop(factor.Network, element) : current;
    }

    /// <summary>What a voltmeter shows between two nodes, with its slopes.</summary>
    public Outcome<AcReading> VoltsReading(int a, int b)
    {
        var volts = VoltageBetween(a, b);
        return volts.Succeeded
            ? new AcReading("voltage", volts.Value, factor, state, () => new AcState(factor, new double[factor.Network.ElementCount], a, b), 1)
            : volts.Problem!;
    }

    /// <summary>What a clamp meter shows around an element, with its slopes.</summary>
    public Outcome<AcReading> AmperesReading(int element)
    {
        var current = Current(element);
        if (!current.Succeeded)
        {
            return current.Problem!;
        }

        return factor.Topology.Contraction.Joints.Contains(element)
            ? Undetermined.JointAsReading(factor.Network, element)
            : new AcReading("current", current.Value, factor, state, () => new AcState(factor, Unit(element)), -1);
    }

    /// <summary>One volt that drives current from A to B through the element.</summary>
    private double[] Unit(int element)
    {
        var volts = new double[factor.Network.ElementCount];
        volts[element] = -1;
        return volts;
    }
}
