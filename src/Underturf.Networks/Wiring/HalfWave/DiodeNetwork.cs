using Underturf.Quantities;

namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>
/// A wiring network with diodes. Each diode stands in <see cref="Wiring"/> as a resistor of its series ohms, so layout, variants and the
/// linear solvers stay as they are. A variant with 0 ohm there is a diode failed to a short, with infinity one failed open.
/// </summary>
public sealed class DiodeNetwork
{
    private readonly List<Diode> diodes;

    /// <param name="wiring">Copied; what is added here later does not touch it.</param>
    public DiodeNetwork(WiringNetwork wiring)
        : this(wiring.Clone(), [])
    {
    }

    private DiodeNetwork(WiringNetwork wiring, List<Diode> diodes)
    {
        Wiring = wiring;
        this.diodes = diodes;
    }

    /// <summary>All elements. The linear solvers take a diode for its series ohms.</summary>
    public WiringNetwork Wiring { get; }

    public IReadOnlyList<Diode> Diodes => diodes;

    /// <param name="seriesOhms">Ohms of the body and leads, above zero.</param>
    /// <returns>The number of the diode's element; its current counts from anode to cathode.</returns>
    public int AddDiode(string name, int anode, int cathode, Junction junction, double seriesOhms)
    {
        var element = Wiring.AddResistor(name, anode, cathode, seriesOhms);
        diodes.Add(new Diode(element, junction));
        return element;
    }

    /// <summary>The same diodes in a variant of the wiring, which may have elements more.</summary>
    public DiodeNetwork With(WiringNetwork variant) => variant.ElementCount >= Wiring.ElementCount
        ? new DiodeNetwork(variant, [.. diodes])
        : throw new ArgumentException($"{variant.ElementCount} elements are not a variant of {Wiring.ElementCount}.", nameof(variant));

    /// <summary>One period of the steady state. See docs/models/half-wave.md.</summary>
    /// <returns>The solution, or a problem that names the element or node, or says that the network does not settle.</returns>
    public Outcome<PeriodicSolution> SolvePeriodic(double hertz) =>
        DiodeCheck.BeforePeriodic(this, hertz) is { } problem ? problem : PeriodicSolver.Solve(this, hertz);

    /// <summary>What an ohmmeter, or a meter's diode range, reads between two nodes; swap them for the other polarity.</summary>
    /// <param name="red">Node at the lead that is positive under test.</param>
    /// <param name="black">Node at the other lead.</param>
    /// <returns>The reading, over range where there is no path, or a problem that names the element or node.</returns>
    public Outcome<DriveReading> ReadOhms(int red, int black, TestDrive drive) =>
        DiodeCheck.BeforeOhms(this, red, black, drive) is { } problem ? problem : DriveSolver.Read(this, red, black, drive);

    /// <summary>Diodes that are neither shorted nor open in this variant.</summary>
    internal Diode[] Working() => [.. diodes.Where(d => Wiring.Ohmic[d.Element] is > 0 and < double.PositiveInfinity)];
}
