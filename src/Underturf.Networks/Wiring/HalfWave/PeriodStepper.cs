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

        PeriodRatio = coils.Aggregate(0.0, (most, e) => Math.Max(most, Math.Exp(-wiring.Ohmic[e] / (wiring.Inductive[e] * hertz))));
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
    /// What at most is left after a period of the difference between two courses of the same network. The energy of the difference,
    /// sum of L d^2 / 2, loses R d^2 in each coil; resistances and diodes give none back, because their currents grow with their volts.
    /// </summary>
    internal double PeriodRatio { get; }

    /// <summary>Largest current of a coil so far.</summary>
    internal double MostAmperes { get; private set; }

    /// <summary>Currents of the coils now and one step before: all that one step hands to the next.</summary>
    internal double[] State() => [.. now, .. before];

    internal void Restart(double[] state)
    {
        Array.Copy(state, 0, now, 0, now.Length);
        Array.Copy(state, now.Length, before, 0, before.Length);
    }

    /// <summary>
    /// One period, or less: where two steps running the coils' currents are what they were a period before, all repeats itself from there on,
    /// and the rest of the record stands.
    /// </summary>
    /// <param name="share">Difference that counts as none, as a share of the largest current; none to go to the end.</param>
    internal PeriodEnd Run(double? share)
    {
        var alike = 0;
        for (var step = 1; step <= Record.Steps; step++)
        {
            if (!Step(Record.Phase(step)))
            {
                return PeriodEnd.Unsolved;
            }

            foreach (var amperes in now)
            {
                MostAmperes = Math.Max(MostAmperes, Math.Abs(amperes));
            }

            alike = Record.Difference(step, now) <= share * MostAmperes ? alike + 1 : 0;
            Record.Keep(step, nodes, now, ports.Amperes);
            if (alike == 2)
            {
                return PeriodEnd.Repeats;
            }
        }

        return PeriodEnd.Complete;
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

/// <summary>How a period ended.</summary>
internal enum PeriodEnd
{
    /// <summary>A step was not solved.</summary>
    Unsolved,

    /// <summary>At its end, without having repeated the one before.</summary>
    Complete,

    /// <summary>Where it repeats the one before.</summary>
    Repeats,
}
