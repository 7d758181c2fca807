using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>
/// A transformer as its plate and a meter give it: volts with nothing running, volts at rated load, rated volt-amperes. Its inside is taken
/// as a resistance, which in small transformers outweighs the leakage reactance (from memory).
/// </summary>
/// <param name="OpenVolts">Volts at its output with nothing running, rms.</param>
/// <param name="RatedVolts">Volts at its output when it delivers its rated volt-amperes into a resistive load, rms.</param>
/// <param name="RatedVoltAmperes">Volts times amperes at its output that it may deliver without end.</param>
public readonly record struct Transformer(double OpenVolts, double RatedVolts, double RatedVoltAmperes)
{
    /// <summary>Share of the open-circuit volts that is lost at rated load: r = 1 - V_rated / V_open.</summary>
    public double RegulationShare => 1 - (RatedVolts / OpenVolts);

    /// <summary>Amperes at rated load: I = S / V_rated (exact from the definition).</summary>
    public double RatedAmperes => RatedVoltAmperes / RatedVolts;

    /// <summary>
    /// R = (V_open - V_rated) / I = (V_open - V_rated) V_rated / S, the same as r (1 - r) V_open^2 / S (exact from the definition, for a
    /// resistive inside). Rules of thumb that leave out (1 - r) say about a tenth more.
    /// </summary>
    public double InnerOhms => (OpenVolts - RatedVolts) * RatedVolts / RatedVoltAmperes;

    /// <param name="regulationShare">Share of the open-circuit volts that is lost at rated load, from 0 to below 1.</param>
    public static Transformer Of(double openVolts, double regulationShare, double ratedVoltAmperes) =>
        new(openVolts, openVolts * (1 - regulationShare), ratedVoltAmperes);

    /// <summary>
    /// Inner ohms from two readings at the output, idle and at known amperes:
    /// R I = sqrt(V_idle^2 - (V_loaded sin phi)^2) - V_loaded cos phi (exact: the triangle of V_idle = V_loaded + R I).
    /// </summary>
    /// <remarks>
    /// The difference of two close readings: an error of 0.1 V in one of them at 1 A is 0.1 ohm. A valve's coil that holds has a power factor near a
    /// quarter, and taking it as 1 then finds a quarter of the ohms.
    /// </remarks>
    /// <param name="powerFactorShare">cos phi of the load: ohms over impedance, 1 for a resistor, above 0.</param>
    /// <returns>The ohms, or a problem where the readings cannot both be right.</returns>
    public static Outcome<double> InnerOhmsOf(double idleVolts, double loadedVolts, double amperes, double powerFactorShare = 1)
    {
        if (!(idleVolts > 0 && loadedVolts > 0 && amperes > 0 && powerFactorShare is > 0 and <= 1))
        {
            return new Problem("readings of the supply", "hold volts, amperes or a power factor that cannot be", "Give volts and amperes above zero and a power factor above 0, at most 1");
        }

        if (loadedVolts > idleVolts)
        {
            return new Problem("readings of the supply", "show more volts loaded than idle", "Take both readings again, one soon after the other: the mains may have moved between them");
        }

        var across = loadedVolts * Math.Sqrt(1 - (powerFactorShare * powerFactorShare));
        return (Math.Sqrt((idleVolts * idleVolts) - (across * across)) - (loadedVolts * powerFactorShare)) / amperes;
    }
}
