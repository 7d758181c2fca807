namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>
/// The current of a junction over its volts, with the slope and with the step that Newton's iteration may take. A reversed junction also
/// leaks <see cref="LeakageSiemens"/>, so that no node hangs in the air.
/// </summary>
internal readonly struct JunctionCurve
{
    /// <summary>One picosiemens across a junction, far below any real leak; circuit simulators take the same.</summary>
    private const double LeakageSiemens = 1e-12;

    /// <summary>Boltzmann's constant (SI, exact by definition).</summary>
    private const double JoulesPerKelvin = 1.380649e-23;

    /// <summary>The elementary charge (SI, exact by definition).</summary>
    private const double Coulombs = 1.602176634e-19;

    /// <summary>Beyond it the exponential goes on as a straight line; no iteration that arrives ends there.</summary>
    private const double MostExponent = 200;

    private readonly double saturationAmperes;
    private readonly double slopeVolts;
    private readonly double perVolt;
    private readonly double kneeVolts;

    internal JunctionCurve(Junction junction)
    {
        saturationAmperes = junction.SaturationAmperes;
        slopeVolts = junction.EmissionFactor * JoulesPerKelvin * junction.Kelvins / Coulombs;
        perVolt = 1 / slopeVolts;
        kneeVolts = slopeVolts * Math.Log(slopeVolts / (Math.Sqrt(2) * saturationAmperes));
    }

    /// <summary>Amperes at the given volts across the junction.</summary>
    internal double Amperes(double volts, out double siemens)
    {
        var exponent = volts * perVolt;
        var growth = Math.Exp(Math.Min(exponent, MostExponent));
        siemens = (saturationAmperes * growth * perVolt) + LeakageSiemens;
        var beyond = Math.Max(0, exponent - MostExponent);
        return (saturationAmperes * ((growth * (1 + beyond)) - 1)) + (LeakageSiemens * volts);
    }

    /// <summary>
    /// Where Newton's step may go: above the knee, where the curve bends most, a step up is taken along the logarithm, so that the
    /// exponential cannot overflow (the limit of Nagel 1975; from memory).
    /// </summary>
    internal double Limit(double toVolts, double fromVolts)
    {
        if (toVolts <= kneeVolts || Math.Abs(toVolts - fromVolts) <= 2 * slopeVolts)
        {
            return toVolts;
        }

        if (fromVolts <= 0)
        {
            return slopeVolts * Math.Log(toVolts * perVolt);
        }

        var growth = 1 + ((toVolts - fromVolts) * perVolt);
        return growth > 0 ? fromVolts + (slopeVolts * Math.Log(growth)) : kneeVolts;
    }
}
