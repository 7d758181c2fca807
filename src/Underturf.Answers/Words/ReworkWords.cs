using System.Globalization;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Water;

namespace Underturf.Planning.Rework;

/// <summary>What is foreseen, as a technician says it.</summary>
public static class ReworkWords
{
    /// <summary>"0.208 ± 0.004 A, 31.0 ± 1.5 ohm, 23.4 ± 0.3 V at the coil before it moves".</summary>
    public static string Electrical(Foreseen seen) =>
        $"{Amperes(seen)}, {Say.Amount(seen.Ohms, seen.OhmsSpread, Dimension.Resistance)}, {Say.Amount(seen.Volts, seen.VoltsSpread, Dimension.Voltage)} at the coil before it moves";

    /// <summary>"31.6 ± 3.2 gpm, 36 ± 5 psi at the outlets".</summary>
    public static string Water(PartFlow flow, bool usUnits)
    {
        var say = new WaterSay(usUnits);
        return $"{say.Flow(flow.CubicMetresPerSecond, flow.SpreadCubicMetresPerSecond)}, {say.Pressure(flow.OutletPascals, flow.OutletSpreadPascals)} at the outlets";
    }

    /// <summary>Where the flow comes from.</summary>
    public static string WaterFrom(PartFlow before) => before.Metered
        ? "by what the meter showed of it, its valves alike"
        : "by its noted outlets, or as its fellows give, its valves alike: meter it before and after";

    /// <summary>A clamp meter shows two digits; the spread is of the third.</summary>
    public static string Amperes(Foreseen seen) => string.Create(CultureInfo.InvariantCulture, $"{seen.Amperes:0.000} ± {seen.AmperesSpread:0.000} A");
}
