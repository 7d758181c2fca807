using System.Globalization;

namespace Underturf.Quantities;

/// <summary>
/// The one file that converts between units. Every unit is read as <c>si = (number + offset) * factor</c>.
/// Exact factors: 1 ft = 0.3048 m and 1 US gal = 231 in3 (NIST SP 811, appendix B); 1 psi from 1 lb = 0.45359237 kg and g = 9.80665 m/s2.
/// </summary>
public static class Units
{
    private const double CubicMetresPerGallon = 231 * 0.0254 * 0.0254 * 0.0254;
    private const double PascalsPerPsi = 0.45359237 * 9.80665 / (0.0254 * 0.0254);

    private static readonly Unit[] All =
    [
        new("m", Dimension.Length, 1),
        new("mm", Dimension.Length, 0.001),
        new("cm", Dimension.Length, 0.01),
        new("km", Dimension.Length, 1000),
        new("ft", Dimension.Length, 0.3048),
        new("in", Dimension.Length, 0.0254),
        new("yd", Dimension.Length, 0.9144),
        new("ohm", Dimension.Resistance, 1),
        new("milliohm", Dimension.Resistance, 0.001),
        new("kohm", Dimension.Resistance, 1e3),
        new("Mohm", Dimension.Resistance, 1e6),
        new("V", Dimension.Voltage, 1),
        new("mV", Dimension.Voltage, 0.001),
        new("A", Dimension.Current, 1),
        new("mA", Dimension.Current, 0.001),
        new("VA", Dimension.ApparentPower, 1),
        new("Hz", Dimension.Frequency, 1),
        new("m3/s", Dimension.Flow, 1),
        new("L/s", Dimension.Flow, 0.001),
        new("L/min", Dimension.Flow, 0.001 / 60),
        new("m3/h", Dimension.Flow, 1.0 / 3600),
        new("gpm", Dimension.Flow, CubicMetresPerGallon / 60),
        new("Pa", Dimension.Pressure, 1),
        new("kPa", Dimension.Pressure, 1000),
        new("bar", Dimension.Pressure, 1e5),
        new("psi", Dimension.Pressure, PascalsPerPsi),
        new("s", Dimension.Time, 1),
        new("min", Dimension.Time, 60),
        new("h", Dimension.Time, 3600),
        new("K", Dimension.Temperature, 1),
        new("C", Dimension.Temperature, 1, 273.15),
        new("F", Dimension.Temperature, 5.0 / 9, 459.67),
        new("m2", Dimension.Area, 1),
        new("ft2", Dimension.Area, 0.3048 * 0.3048),
        new("ha", Dimension.Area, 1e4),
        new("acre", Dimension.Area, 43560 * 0.3048 * 0.3048),
        new("uF", Dimension.Capacitance, 1e-6),
        new("nF", Dimension.Capacitance, 1e-9),
        new("pF", Dimension.Capacitance, 1e-12),
    ];

    private static readonly Dictionary<string, string> Aliases = new(StringComparer.Ordinal)
    {
        ["feet"] = "ft", ["foot"] = "ft", ["'"] = "ft", ["inch"] = "in", ["inches"] = "in", ["\""] = "in", ["metre"] = "m", ["metres"] = "m",
        ["meter"] = "m", ["meters"] = "m", ["Ω"] = "ohm", ["ohms"] = "ohm", ["Ohm"] = "ohm", ["kΩ"] = "kohm", ["kohms"] = "kohm",
        ["kilohm"] = "kohm", ["MΩ"] = "Mohm", ["megohm"] = "Mohm", ["mohm"] = "milliohm", ["volts"] = "V", ["volt"] = "V", ["v"] = "V",
        ["amp"] = "A", ["amps"] = "A", ["ma"] = "mA", ["va"] = "VA", ["hz"] = "Hz", ["GPM"] = "gpm", ["PSI"] = "psi", ["sec"] = "s",
        ["seconds"] = "s", ["mins"] = "min", ["minutes"] = "min", ["minute"] = "min", ["hr"] = "h", ["hours"] = "h", ["hour"] = "h",
        ["°C"] = "C", ["degC"] = "C", ["°F"] = "F", ["degF"] = "F", ["l/s"] = "L/s", ["l/min"] = "L/min", ["acres"] = "acre",
        ["\u2126"] = "ohm", ["k\u2126"] = "kohm", ["M\u2126"] = "Mohm", ["kilohms"] = "kohm", ["megohms"] = "Mohm", ["µF"] = "uF",
        ["\u03bcF"] = "uF", ["m²"] = "m2", ["ft²"] = "ft2", ["m³/s"] = "m3/s", ["m³/h"] = "m3/h", ["\u2032"] = "ft", ["\u2033"] = "in",
    };

    private static readonly Dictionary<string, Unit> ByName = All.ToDictionary(u => u.Name, StringComparer.Ordinal);

    /// <summary>Reads "31.5 ohm" as a value in SI units of <paramref name="dimension"/>, without regard to culture.</summary>
    /// <returns>The SI value, or a problem that names the text and the units that would do.</returns>
    public static Outcome<double> Parse(string text, Dimension dimension)
    {
        var trimmed = text.Trim().Replace('\u2212', '-');
        var split = 0;
        while (split < trimmed.Length && (char.IsAsciiDigit(trimmed[split]) || trimmed[split] is '.' or '-' or '+'
            || IsExponent(trimmed, split)))
        {
            split++;
        }

        var number = trimmed[..split];
        var name = trimmed[split..].Trim();
        var place = Problem.Quote(text);
        if (!double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var parsed) || !double.IsFinite(parsed))
        {
            return new Problem(place, "has no number in front", $"Write a number and a unit, for example {Example(dimension)}");
        }

        if (name.Length == 0)
        {
            return new Problem(place, "has no unit", $"Write the unit after the number, for example {Example(dimension)}");
        }

        if (Find(name) is not { } unit || unit.Dimension != dimension)
        {
            return new Problem(place, $"{Problem.Quote(name)} is not a unit of {Name(dimension)}", $"Use one of: {Choices(dimension)}");
        }

        var si = (parsed + unit.Offset) * unit.Factor;
        return dimension == Dimension.Temperature && si < 0
            ? new Problem(place, "is below absolute zero", "Check the sign and the unit")
            : si;
    }

    /// <summary>The SI value in the named unit. The name must exist: a wrong one is a bug.</summary>
    public static double In(double si, string unit) => (si / ByName[unit].Factor) - ByName[unit].Offset;

    /// <summary>The number in the named unit as an SI value.</summary>
    public static double From(double number, string unit) => (number + ByName[unit].Offset) * ByName[unit].Factor;

    /// <summary>The dimension's name as a reader would say it.</summary>
    public static string Name(Dimension dimension) => dimension switch
    {
        Dimension.ApparentPower => "apparent power",
        _ => dimension.ToString().ToLowerInvariant(),
    };

    private static Unit? Find(string name) =>
        ByName.GetValueOrDefault(name) ?? (Aliases.TryGetValue(name, out var known) ? ByName[known] : null);

    private static string Choices(Dimension dimension) =>
        string.Join(", ", All.Where(u => u.Dimension == dimension).Select(u => u.Name));

    private static string Example(Dimension dimension) => $"\"12 {All.First(u => u.Dimension == dimension).Name}\"";

    private static bool IsExponent(string text, int at) =>
        text[at] is 'e' or 'E' && at > 0 && at + 1 < text.Length && (char.IsAsciiDigit(text[at + 1]) || text[at + 1] is '-' or '+');

    private sealed record Unit(string Name, Dimension Dimension, double Factor, double Offset = 0);
}
