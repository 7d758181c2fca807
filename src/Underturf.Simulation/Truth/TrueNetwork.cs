using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;

namespace Underturf.Simulation;

/// <summary>
/// The whole property as one network, faults and all: every station, every coil, every common. Reasoning looks at one station at a time
/// with one fault; readings taken here do not share that shortcut.
/// </summary>
internal sealed class TrueNetwork
{
    private readonly TrueLayout layout;

    /// <summary>
    /// Laid out for direct current, each common lifted from its terminal; or for alternating current with the coils' reactance, the commons
    /// of a controller joined there.
    /// </summary>
    public TrueNetwork(TrueWiring wiring, double? reactanceOhms)
    {
        Of = wiring;
        layout = new TrueLayout(wiring, reactanceOhms);
        Straight = layout.Circuit.Diodes.Count == 0 ? layout.Circuit : new DiodeNetwork(layout.Circuit.Wiring);
    }

    public TrueWiring Of { get; }

    /// <summary>With the diodes of half-wave devices.</summary>
    public DiodeNetwork WithDiodes => layout.Circuit;

    /// <summary>Each diode a joint: the same for what no diode is joined to, and solved by phasors.</summary>
    public DiodeNetwork Straight { get; }

    /// <summary>The network for what a station's terminal feeds.</summary>
    public DiodeNetwork CircuitOf(params IEnumerable<string> stations) => stations.Any(Of.MeetsDiodes) ? WithDiodes : Straight;

    /// <summary>The node of a station's output, on which another's conductor may really sit.</summary>
    public int Terminal(string station) => layout.Wiring.Node(TrueLayout.TerminalName(Of.FedBy(station)));

    /// <summary>The controller's end of the common by which a station returns.</summary>
    public int Common(string station) => CommonTerminal(Of.CommonOf(station));

    public int CommonTerminal(string common) => layout.Wiring.Node(TrueLayout.CommonName(common));

    public int Node(string station, string place) => layout.Wiring.Node(TrueLayout.NodeName(station, place));

    public int CommonNode(string station, string place) => layout.CommonNode(Of.CommonOf(station), place);

    /// <summary>The network with the coil at a place bridged.</summary>
    public DiodeNetwork Bridged(DiodeNetwork circuit, string station, string place) => circuit.With(circuit.Wiring.With(Coil(station, place), 0));

    /// <summary>The network with the conductor that comes into a place from the controller taken off there.</summary>
    public DiodeNetwork Opened(DiodeNetwork circuit, string station, string place) =>
        circuit.With(circuit.Wiring.With(layout.Element(TrueLayout.NodeName(station, place)), double.PositiveInfinity));

    public int Coil(string station, string place) => layout.Element($"coil {station}@{place}");

    /// <summary>Coils of the further valves of a station, as far as one fault put them there.</summary>
    public IEnumerable<int> BranchCoils(TrueFault branch) => Enumerable.Range(0, branch.MoreCoils).Select(i => layout.Element($"coil {TrueLayout.BranchName(branch, i)}"));

    public Element ElementAt(int element) => layout.Wiring.ElementAt(element);
}
