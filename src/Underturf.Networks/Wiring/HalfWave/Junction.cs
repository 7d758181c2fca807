namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>
/// The junction of a diode, i = Is (exp(u / (n k T / q)) - 1): Shockley's equation (from memory), without breakdown, charge or
/// self-heating. A reversed junction also leaks <see cref="LeakageSiemens"/>, so that no node hangs in the air.
/// </summary>
/// <param name="SaturationAmperes">Is, at the junction's own temperature; it grows about twofold every 10 K.</param>
/// <param name="EmissionFactor">n, between 1 and about 2.</param>
/// <param name="Kelvins">T, of the junction.</param>
public readonly record struct Junction(double SaturationAmperes, double EmissionFactor, double Kelvins)
{
    /// <summary>One picosiemens across a junction, far below any real leak; circuit simulators take the same.</summary>
    internal const double LeakageSiemens = 1e-12;

    /// <summary>Boltzmann's constant (SI, exact by definition).</summary>
    private const double JoulesPerKelvin = 1.380649e-23;

    /// <summary>The elementary charge (SI, exact by definition).</summary>
    private const double Coulombs = 1.602176634e-19;

    /// <summary>Beyond it the exponential goes on as a straight line; no step that converges ends there.</summary>
    private const double MostExponent = 200;

    /// <summary>n k T / q.</summary>
    internal double SlopeVolts => EmissionFactor * JoulesPerKelvin * Kelvins / Coulombs;

    /// <summary>Where the curve bends most; steps above it are shortened.</summary>
    internal double KneeVolts => SlopeVolts * Math.Log(SlopeVolts / (Math.Sqrt(2) * SaturationAmperes));

    /// <summary>Amperes at the given volts across the junction.</summary>
    internal double Amperes(double volts, out double siemens)
    {
        var exponent = volts / SlopeVolts;
        var growth = Math.Exp(Math.Min(exponent, MostExponent));
        siemens = (SaturationAmperes * growth / SlopeVolts) + LeakageSiemens;
        var beyond = Math.Max(0, exponent - MostExponent);
        return (SaturationAmperes * ((growth * (1 + beyond)) - 1)) + (LeakageSiemens * volts);
    }

    /// <summary>
    /// Where Newton's step may go: above the knee a step up is taken along the logarithm, so that the exponential cannot overflow (the
    /// limit of L. Nagel, SPICE2, 1975; from memory).
    /// </summary>
    internal double Limit(double toVolts, double fromVolts)
    {
        var slope = SlopeVolts;
        if (toVolts <= KneeVolts || Math.Abs(toVolts - fromVolts) <= 2 * slope)
        {
            return toVolts;
        }

        if (fromVolts <= 0)
        {
            return slope * Math.Log(toVolts / slope);
        }

        var growth = 1 + ((toVolts - fromVolts) / slope);
        return growth > 0 ? fromVolts + (slope * Math.Log(growth)) : KneeVolts;
    }
}

/// <summary>A diode in a network.</summary>
/// <param name="Element">Its element, a resistor from anode to cathode with the diode's series ohms.</param>
public readonly record struct Diode(int Element, Junction Junction);
