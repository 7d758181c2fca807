using Underturf.Quantities;

namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>One period of a network with diodes in the steady state. Ask for voltages between nodes: no node is earth.</summary>
public sealed class PeriodicSolution
{
    private readonly WiringNetwork wiring;
    private readonly Topology topology;
    private readonly PeriodRecord record;
    private double[][]? joints;

    internal PeriodicSolution(DiodeNetwork network, double hertz, int periods, PeriodRecord record)
    {
        wiring = network.Wiring;
        topology = wiring.Topologies.Alternating(wiring);
        this.record = record;
        Hertz = hertz;
        PeriodsToSettle = periods;
        KirchhoffResidualAmperes = record.Imbalance();
    }

    public double Hertz { get; }

    /// <summary>Periods gone through from rest until one repeated the one before.</summary>
    public int PeriodsToSettle { get; }

    /// <summary>Largest imbalance of currents at a node at any step, each diode's current by its own equation.</summary>
    public double KirchhoffResidualAmperes { get; }

    /// <summary>Volts of node a over node b through a period.</summary>
    /// <returns>The waveform, or a problem where an open separates the two.</returns>
    public Outcome<Waveform> VoltageBetween(int a, int b)
    {
        if ((WiringCheck.Known(wiring, a) ?? WiringCheck.Known(wiring, b)) is { } unknown)
        {
            return unknown;
        }

        if (!topology.SamePart(a, b))
        {
            return Undetermined.Between(wiring, a, b);
        }

        var contraction = topology.Contraction;
        var (p, q) = (contraction.Merged(a), contraction.Merged(b));
        var offset = Math.Sqrt(2) * (contraction.Offset(a) - contraction.Offset(b));
        return Sample(n => record.Volts(p, n) - record.Volts(q, n) + (offset * record.Phase(n)));
    }

    /// <summary>Amperes from A through the element to B through a period, from anode to cathode for a diode.</summary>
    /// <returns>The waveform, or a problem for a perfect joint in a loop of perfect joints.</returns>
    public Outcome<Waveform> Current(int element)
    {
        if (!topology.Contraction.Joints.Contains(element))
        {
            return Sample(n => record.Amperes(element, n));
        }

        joints ??= [.. Enumerable.Range(0, record.Steps).Select(AllCurrents)];
        return double.IsNaN(joints[0][element]) ? Undetermined.JointInLoop(wiring, element) : Sample(n => joints[n][element]);
    }

    /// <summary>The current of a coil against the one that holds its plunger.</summary>
    /// <param name="holdInAmperes">Rms amperes that hold it in, of the coil's kind.</param>
    /// <returns>The duty, or the problem of <see cref="Current"/>.</returns>
    public Outcome<CoilDuty> Duty(int coil, double holdInAmperes)
    {
        var current = Current(coil);
        return current.Succeeded ? CoilDuty.Of(current.Value, holdInAmperes) : current.Problem!;
    }

    private Waveform Sample(Func<int, double> at)
    {
        var samples = new double[record.Steps];
        for (var n = 0; n < samples.Length; n++)
        {
            samples[n] = at(n);
        }

        return new Waveform(samples);
    }

    private double[] AllCurrents(int sample)
    {
        var currents = new double[wiring.ElementCount];
        var leaving = new double[wiring.NodeCount];
        for (var e = 0; e < currents.Length; e++)
        {
            currents[e] = record.Amperes(e, sample);
            leaving[wiring.Layout.A[e]] += currents[e];
            leaving[wiring.Layout.B[e]] -= currents[e];
        }

        JointCurrents.Fill(wiring, topology.Contraction.Joints, leaving, currents);
        return currents;
    }
}
