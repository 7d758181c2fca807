namespace Underturf.Networks.Wiring.Instruments;

/// <summary>A voltmeter, that is digits and the load it puts between its leads.</summary>
/// <param name="InputOhms">Ten megohms or a low-impedance setting: the meter is an element of the network it reads.</param>
/// <param name="InputFarads">Of meter and leads, beside the ohms.</param>
public sealed record Voltmeter(Display Display, double InputOhms, double InputFarads = 0)
{
    /// <summary>
    /// Puts the meter's ohms between two nodes; the solution's voltage between them is then what reaches the digits. The farads are left
    /// out: they matter on conductors that float, see <see cref="PhantomVolts"/>.
    /// </summary>
    /// <returns>The number of the element.</returns>
    public int AddTo(WiringNetwork network, string name, int a, int b) => network.AddResistor(name, a, b, InputOhms);

    /// <summary>Volts that reach the digits from a source with the given open-circuit volts and internal ohms: V R / (R + r).</summary>
    public double LoadedVolts(double openVolts, double sourceOhms) => openVolts / (1 + (sourceOhms / InputOhms));

    public Shown Show(double volts, MeterError error = default) => Display.Show(volts, error);

    public MeasuredVolts Read(Shown shown) => new(shown.Si, Display.SpreadSi(shown));
}
