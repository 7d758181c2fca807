namespace Underturf.Networks.Wiring;

/// <summary>
/// What a transformer's plate says, as the source that it is: open-circuit volts behind ohms. At its rated load, a resistance, it gives its
/// rated volts and volt-amperes.
/// </summary>
/// <remarks>
/// R = (V0 - V) V / S, with V0 the open-circuit volts, V and S as rated (exact for a source behind ohms). In small transformers the ohms of the
/// windings outweigh the leakage inductance, which is left out; into a coil the drop then is a little high (from memory).
/// </remarks>
/// <param name="RatedVolts">Rms volts at rated load.</param>
/// <param name="RatedVoltAmperes">Rated load.</param>
/// <param name="OpenVolts">Rms volts with nothing connected.</param>
public readonly record struct TransformerRating(double RatedVolts, double RatedVoltAmperes, double OpenVolts)
{
    /// <summary>Ohms of the windings, seen from the output.</summary>
    public double InnerOhms => (OpenVolts - RatedVolts) * RatedVolts / RatedVoltAmperes;

    /// <param name="regulationRatio">Rise of the volts from rated load to none, as a share of the rated volts.</param>
    public static TransformerRating WithRegulation(double ratedVolts, double ratedVoltAmperes, double regulationRatio) =>
        new(ratedVolts, ratedVoltAmperes, ratedVolts * (1 + regulationRatio));

    /// <summary>Adds the source between two nodes, rms volts counted of the first over the second.</summary>
    /// <returns>The element's number.</returns>
    public int AddTo(WiringNetwork network, string name, int a, int b) => network.AddSource(name, a, b, OpenVolts, InnerOhms);
}
