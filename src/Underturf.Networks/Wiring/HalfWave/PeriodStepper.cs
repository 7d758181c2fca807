namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>
/// Goes through a period in equal steps h by the two-step backward difference, L di/dt = (L / h)(3/2 i_n - 2 i_(n-1) + 1/2 i_(n-2)), which
/// does not ring when a diode stops (Gear 1971; from memory). A coil then is R + 3 L / (2 h) ohms with volts in series by what it remembers.
/// On a sine the rule gives (x + x^3 / 3 + ...) / x of the derivative, x radians a step; L is divided by that, so the fundamental is right.
/// </summary>
internal sealed class PeriodStepper
{
    private readonly InstantFactor linear;
    private readonly DiodePorts ports;
    private readonly int[] coils;
    private readonly double[] henriesPerStep;
    private readonly double[] sourceAmperes;
    private readonly double[] nodes;
    private readonly double[] now;
    private readonly double[] before;

    internal PeriodStepper(DiodeNetwork network, double hertz, int steps)
    {
        var wiring = network.Wiring;
        var topology = wiring.Topologies.Alternating(wiring);
        Diodes = network.Working();
        coils = [.. Enumerable.Range(0, wiring.ElementCount).Where(e => topology.Finite[e] && wiring.Inductive[e] > 0)];
        henriesPerStep = new double[coils.Length];
        for (var c = 0; c < coils.Length; c++)
        {
            henriesPerStep[c] = wiring.Inductive[coils[c]] * hertz * steps / Exaggeration(2 * Math.PI / steps);
        }

        linear = new InstantFactor(wiring, topology, Conductances(wiring, topology));
        ports = new DiodePorts(linear, Diodes);
        PeakVolts = Peaks(wiring, topology);
        nodes = new double[linear.NodeCount];
        sourceAmperes = new double[linear.NodeCount];
        for (var e = 0; e < PeakVolts.Length; e++)
        {
            linear.Push(e, PeakVolts[e], sourceAmperes);
        }

        (now, before) = (new double[coils.Length], new double[coils.Length]);
        Record = new PeriodRecord(steps, linear, coils, Diodes, PeakVolts);
    }

    internal Diode[] Diodes { get; }

    /// <summary>Peak volts in series with each element, by its own source and by contracted ones.</summary>
    internal double[] PeakVolts { get; }

    /// <summary>The last period gone through.</summary>
    internal PeriodRecord Record { get; }

    /// <summary>
    /// Goes on from rest until the coils' currents, all that one step hands to the next, are at two steps running what they were a period
    /// before: from there on all repeats itself, wherever in the period that is.
    /// </summary>
    /// <param name="mostSteps">When to give up.</param>
    /// <param name="share">Difference that counts as none, as a share of the largest current so far.</param>
    /// <returns>Steps taken, or -1 where a step was not solved, or mostSteps where nothing repeated.</returns>
    internal int Run(int mostSteps, double share)
    {
        var (most, alike) = (0.0, 0);
        for (var step = 1; step < mostSteps; step++)
        {
            if (!Step(Record.Phase(step)))
            {
                return -1;
            }

            foreach (var amperes in now)
            {
                most = Math.Max(most, Math.Abs(amperes));
            }

            alike = step > Record.Steps && Record.Difference(step, now) <= share * most ? alike + 1 : 0;
            Record.Keep(step, nodes, now, ports.Amperes);
            if (alike == 2)
            {
                return step;
            }
        }

        return mostSteps;
    }

    /// <param name="sine">Of the sources, at the end of the step.</param>
    private bool Step(double sine)
    {
        for (var k = 0; k < nodes.Length; k++)
        {
            nodes[k] = sine * sourceAmperes[k];
        }

        for (var c = 0; c < coils.Length; c++)
        {
            linear.Push(coils[c], Remembered(c), nodes);
        }

        linear.Solve(nodes);
        if (!ports.Bend(nodes, PeakVolts, sine))
        {
            return false;
        }

        for (var c = 0; c < coils.Length; c++)
        {
            var current = linear.Current(coils[c], nodes, Remembered(c) + (sine * PeakVolts[coils[c]]));
            before[c] = now[c];
            now[c] = current;
        }

        return true;
    }

    /// <summary>The rule's derivative of sin x at 0, as a share of the true one: exact.</summary>
    private static double Exaggeration(double x) => ((2 * Math.Sin(x)) - (0.5 * Math.Sin(2 * x))) / x;

    /// <summary>Volts in series with a coil by its last two currents.</summary>
    private double Remembered(int c) => henriesPerStep[c] * ((0.5 * before[c]) - (2 * now[c]));

    private double[] Conductances(WiringNetwork wiring, Topology topology)
    {
        var siemens = new double[wiring.ElementCount];
        for (var e = 0; e < siemens.Length; e++)
        {
            siemens[e] = topology.Finite[e] && wiring.Inductive[e] == 0 ? 1 / wiring.Ohmic[e] : 0;
        }

        for (var c = 0; c < coils.Length; c++)
        {
            siemens[coils[c]] = 1 / (wiring.Ohmic[coils[c]] + (1.5 * henriesPerStep[c]));
        }

        foreach (var diode in Diodes)
        {
            siemens[diode.Element] = DiodePorts.BaseSiemens(wiring.Ohmic[diode.Element]);
        }

        return siemens;
    }

    private static double[] Peaks(WiringNetwork wiring, Topology topology)
    {
        var volts = new double[wiring.ElementCount];
        for (var e = 0; e < volts.Length; e++)
        {
            var ends = topology.Contraction.Offset(wiring.Layout.A[e]) - topology.Contraction.Offset(wiring.Layout.B[e]);
            volts[e] = topology.Finite[e] ? Math.Sqrt(2) * (wiring.Driving[e] - ends) : 0;
        }

        return volts;
    }
}
