using System.Globalization;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Planning.Rework;

/// <summary>What is foreseen, as a technician says it.</summary>
public static class ReworkWords
{
    /// <summary>"0.208 ± 0.004 A, 31.0 ± 1.5 ohm, 23.4 ± 0.3 V at the coil before it moves".</summary>
    public static string Electrical(Foreseen seen) =>
        $"{Amperes(seen)}, {Say.Amount(seen.Ohms, seen.OhmsSpread, Dimension.Resistance)}, {Say.Amount(seen.Volts, seen.VoltsSpread, Dimension.Voltage)} at the coil before it moves";

    /// <summary>A clamp meter shows two digits; the spread is of the third.</summary>
    public static string Amperes(Foreseen seen) => string.Create(CultureInfo.InvariantCulture, $"{seen.Amperes:0.000} ± {seen.AmperesSpread:0.000} A");
}
