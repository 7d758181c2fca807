using System.Globalization;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>Amounts of water as the people of the property say them.</summary>
public sealed class WaterSay(bool usUnits)
{
    public string FlowUnit => usUnits ? "gpm" : "L/min";

    public string PressureUnit => usUnits ? "psi" : "kPa";

    public string VolumeUnit => usUnits ? "gal" : "L";

    public string Flow(double si) => Number(si, FlowUnit);

    public string Flow(double si, double spread) => $"{Bare(si, FlowUnit)} ± {Bare(spread, FlowUnit)} {FlowUnit}";

    public string Pressure(double si) => Number(si, PressureUnit);

    public string Pressure(double si, double spread) => $"{Bare(si, PressureUnit)} ± {Bare(spread, PressureUnit)} {PressureUnit}";

    public string Speed(double metresPerSecond) => usUnits ? $"{Units.In(metresPerSecond, "ft").ToString("0.0", CultureInfo.InvariantCulture)} ft/s" : $"{metresPerSecond.ToString("0.0", CultureInfo.InvariantCulture)} m/s";

    /// <summary>"2,400 to 2,800 gal".</summary>
    public string Volume(double leastCubicMetres, double mostCubicMetres)
    {
        var (low, high) = (Rounded(Units.In(leastCubicMetres, VolumeUnit)), Rounded(Units.In(mostCubicMetres, VolumeUnit)));
        return low == high ? $"{high} {VolumeUnit}" : $"{low} to {high} {VolumeUnit}";
    }

    /// <summary>"6.6 ft", "2 m".</summary>
    public string Height(double metres) => usUnits ? $"{Units.In(metres, "ft").ToString("0.#", CultureInfo.InvariantCulture)} ft" : $"{metres.ToString("0.#", CultureInfo.InvariantCulture)} m";

    /// <summary>"40 s", "12 min", "3.5 h".</summary>
    public static string Time(double seconds) => seconds switch
    {
        < 90 => $"{seconds.ToString("0", CultureInfo.InvariantCulture)} s",
        < 5400 => $"{(seconds / 60).ToString("0", CultureInfo.InvariantCulture)} min",
        _ => $"{(seconds / 3600).ToString("0.#", CultureInfo.InvariantCulture)} h",
    };

    /// <summary>"0.62".</summary>
    public static string Share(double share) => share.ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>A depth in an hour: "14 mm/h" or "0.55 in/h".</summary>
    public string Rate(double metresPerSecond) => usUnits
        ? $"{Units.In(metresPerSecond * 3600, "in").ToString("0.00", CultureInfo.InvariantCulture)} in/h"
        : $"{(metresPerSecond * 3_600_000).ToString("0.#", CultureInfo.InvariantCulture)} mm/h";

    private static string Number(double si, string unit) => $"{Bare(si, unit)} {unit}";

    private static string Bare(double si, string unit)
    {
        var number = Units.In(si, unit);
        return number.ToString(Math.Abs(number) switch { >= 100 => "0", >= 10 => "0.#", >= 1 => "0.#", _ => "0.##" }, CultureInfo.InvariantCulture);
    }

    private static string Rounded(double number)
    {
        var place = number < 10 ? 1 : Math.Pow(10, Math.Floor(Math.Log10(number)) - 1);
        return (Math.Round(number / place) * place).ToString(number < 10 ? "0.#" : "#,0", CultureInfo.InvariantCulture);
    }
}
