using System.Globalization;
using Underturf.Quantities;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Numbers as a technician says them.</summary>
public static class Say
{
    private const int LongestWords = 40;

    /// <summary>"31.5 ± 1.2 ohm".</summary>
    public static string Amount(double si, double sigma, Dimension dimension)
    {
        var (unit, factor) = Unit(si, dimension);
        var (value, spread) = (si / factor, sigma / factor);
        var digits = spread >= 10 || value >= 1000 ? 0 : spread >= 0.1 || value >= 10 ? 1 : 2;
        var form = "F" + digits.ToString(CultureInfo.InvariantCulture);
        return $"{value.ToString(form, CultureInfo.InvariantCulture)} ± {spread.ToString(form, CultureInfo.InvariantCulture)} {unit}";
    }

    /// <summary>Somebody's own words within a sentence: on one line, and cut where they are too long for it.</summary>
    public static string Clipped(string words)
    {
        var line = string.Join(' ', words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= LongestWords ? line : $"{line[..(LongestWords - 1)]}…";
    }

    /// <summary>"28 ohm", "3.2 kohm", "0.25 A": at most three digits.</summary>
    public static string Figure(double si, Dimension dimension)
    {
        var (unit, factor) = Unit(si, dimension);
        var form = (si / factor) switch { >= 100 => "0", >= 10 => "0.#", >= 1 => "0.##", _ => "0.###" };
        return $"{(si / factor).ToString(form, CultureInfo.InvariantCulture)} {unit}";
    }

    /// <summary>"240 ft" or "73 m".</summary>
    public static string Length(double metres, bool usUnits)
    {
        var unit = usUnits ? "ft" : "m";
        return string.Create(CultureInfo.InvariantCulture, $"{Units.In(metres, unit):0} {unit}");
    }

    /// <summary>"24 in" or "600 mm".</summary>
    public static string Small(double metres, bool usUnits)
    {
        var unit = usUnits ? "in" : "mm";
        return string.Create(CultureInfo.InvariantCulture, $"{Units.In(metres, unit):0.#} {unit}");
    }

    /// <summary>"92 %", "under 1 %", "over 99 %".</summary>
    public static string Share(double probability) => probability switch
    {
        < 0.005 => "under 1 %",
        > 0.995 => "over 99 %",
        _ => string.Create(CultureInfo.InvariantCulture, $"{probability * 100:0} %"),
    };

    private static (string Unit, double Factor) Unit(double si, Dimension dimension) => dimension switch
    {
        Dimension.Resistance => si switch { >= 1e6 => ("Mohm", 1e6), >= 2e3 => ("kohm", 1e3), _ => ("ohm", 1) },
        Dimension.Voltage => ("V", 1),
        Dimension.Current => ("A", 1),
        _ => (dimension.ToString(), 1),
    };
}
