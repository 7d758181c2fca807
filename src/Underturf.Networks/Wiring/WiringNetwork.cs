using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>
/// A network of sources, wires, splices and coils. Built by adding elements, then varied cheaply by value: a variant shares the layout and,
/// as long as nothing becomes a perfect joint or an open, the order of elimination.
/// </summary>
public sealed class WiringNetwork
{
    private WiringLayout layout = new();
    private double[] ohms = [];
    private double[] henries = [];
    private double[] volts = [];
    private bool shared;
    private TopologyCache topologies = new();
    private DcFactor? dc;

    public int NodeCount => layout.NodeNames.Count;

    public int ElementCount => layout.Names.Count;

    internal WiringLayout Layout => layout;

    internal ReadOnlySpan<double> Ohmic => ohms;

    internal ReadOnlySpan<double> Inductive => henries;

    internal ReadOnlySpan<double> Driving => volts;

    internal TopologyCache Topologies => topologies;

    /// <summary>The number of the node of that name, made on first mention.</summary>
    public int Node(string name)
    {
        if (!layout.Knows(name))
        {
            Own();
        }

        return layout.Node(name);
    }

    public string NodeName(int node) => layout.NodeNames[node];

    /// <summary>The element as it stands in this variant.</summary>
    public Element ElementAt(int element) => new(
        layout.Names[element],
        layout.Kinds[element],
        layout.A[element],
        layout.B[element],
        ohms[element],
        henries[element],
        volts[element]);

    /// <returns>The element's number, as of all Add methods: 0, 1, 2 in the order of adding.</returns>
    public int AddResistor(string name, int a, int b, double ohms) => Add(name, ElementKind.Resistor, a, b, ohms, 0, 0);

    /// <summary>A single copper wire, one way.</summary>
    public int AddConductor(string name, int a, int b, WireSize size, double lengthMetres, double temperatureKelvins) =>
        Add(name, ElementKind.Conductor, a, b, CopperWire.OhmsPerMetre(size, temperatureKelvins) * lengthMetres, 0, 0);

    public int AddCoil(string name, int a, int b, double ohms, double henries) => Add(name, ElementKind.Coil, a, b, ohms, henries, 0);

    /// <summary>A transformer as an ideal rms source with its ohms in series; zero ohms is an ideal source.</summary>
    public int AddSource(string name, int a, int b, double volts, double ohms) => Add(name, ElementKind.Source, a, b, ohms, 0, volts);

    /// <summary>A variant with other ohms of one element: 0 for a perfect joint, infinity for an open.</summary>
    public WiringNetwork With(int element, double ohms)
    {
        var variant = Clone();
        variant.ohms = [.. this.ohms];
        variant.ohms[element] = ohms;
        variant.ForgetIf(!Topology.SameState(this.ohms[element], ohms));
        return variant;
    }

    /// <summary>A variant with other ohms of every element.</summary>
    public WiringNetwork With(ReadOnlySpan<double> ohms)
    {
        if (ohms.Length != ElementCount)
        {
            throw new ArgumentException($"{ohms.Length} values for {ElementCount} elements.", nameof(ohms));
        }

        var variant = Clone();
        variant.ohms = ohms.ToArray();
        var changed = false;
        for (var e = 0; e < ohms.Length; e++)
        {
            changed |= !Topology.SameState(this.ohms[e], ohms[e]);
        }

        variant.ForgetIf(changed);
        return variant;
    }

    /// <summary>A variant with another inductance of one coil.</summary>
    public WiringNetwork WithHenries(int element, double henries)
    {
        var variant = Clone();
        variant.henries = [.. this.henries];
        variant.henries[element] = henries;
        variant.ForgetIf(ohms[element] == 0);
        return variant;
    }

    /// <summary>A variant with another voltage of one source.</summary>
    public WiringNetwork WithVolts(int element, double volts)
    {
        var variant = Clone();
        variant.volts = [.. this.volts];
        variant.volts[element] = volts;
        variant.ForgetIf(ohms[element] == 0);
        return variant;
    }

    /// <summary>A variant with every source disconnected: what an ohmmeter may be put on.</summary>
    public WiringNetwork WithoutSources()
    {
        var open = ohms.ToArray();
        for (var e = 0; e < open.Length; e++)
        {
            open[e] = layout.Kinds[e] == ElementKind.Source ? double.PositiveInfinity : open[e];
        }

        return With(open);
    }

    /// <summary>A copy to which elements can be added without touching this network.</summary>
    public WiringNetwork Clone()
    {
        shared = true;
        return new WiringNetwork { layout = layout, ohms = ohms, henries = henries, volts = volts, topologies = topologies, shared = true };
    }

    /// <summary>Node voltages and element currents in the steady state. See docs/models/wiring.md.</summary>
    /// <returns>The solution, or a problem that names the element or node.</returns>
    public Outcome<AcSolution> SolveAc(double hertz) => AcSolver.Solve(this, hertz);

    /// <summary>What an ohmmeter reads between two nodes: direct current, coils by their ohms, sources disconnected.</summary>
    /// <returns>The reading, open where there is no path, or a problem that names the element or node.</returns>
    public Outcome<OhmsReading> Ohms(int a, int b)
    {
        if (WiringCheck.BeforeOhms(this, a, b) is { } problem)
        {
            return problem;
        }

        dc ??= new DcFactor(this);
        return dc.Read(a, b);
    }

    private int Add(string name, ElementKind kind, int a, int b, double ohms, double henries, double volts)
    {
        Own();
        layout.Add(name, kind, a, b);
        this.ohms = [.. this.ohms, ohms];
        this.henries = [.. this.henries, henries];
        this.volts = [.. this.volts, volts];
        return ElementCount - 1;
    }

    /// <summary>Before a change of the layout: what variants share stays as it is.</summary>
    private void Own()
    {
        if (shared)
        {
            layout = layout.Copy();
            shared = false;
        }

        ForgetIf(true);
    }

    private void ForgetIf(bool changed)
    {
        dc = null;
        topologies = changed ? new TopologyCache() : topologies;
    }
}
