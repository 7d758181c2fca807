using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>Ohms of annealed copper wire.</summary>
public static class CopperWire
{
    /// <summary>Resistivity of annealed copper at 20 C, ohm metre: 1/58 within its rounding (IEC 60028).</summary>
    public const double OhmMetresAt20C = 1.7241e-8;

    /// <summary>Change of resistance per kelvin, of the resistance at 20 C (IEC 60028; from memory).</summary>
    public const double PerKelvinAt20C = 0.00393;

    /// <summary>20 C.</summary>
    public const double BaseKelvins = 293.15;

    /// <summary>R' = rho (1 + alpha (T - 293.15 K)) / A for a solid conductor; a stranded one is about 2 % higher.</summary>
    /// <remarks>
    /// Linear in temperature, good to 0.1 % from 250 to 370 K. Buried wire is near 290 K; the 75 C figures of building codes are 22 % higher.
    /// </remarks>
    /// <param name="temperatureKelvins">Temperature of the copper, above 50 K, where the straight line still is positive.</param>
    public static double OhmsPerMetre(WireSize size, double temperatureKelvins) =>
        OhmMetresAt20C * (1 + (PerKelvinAt20C * (temperatureKelvins - BaseKelvins))) / size.AreaSquareMetres;
}
