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
        new("m3", Dimension.Volume, 1),
        new("L", Dimension.Volume, 0.001),
        new("gal", Dimension.Volume, CubicMetresPerGallon),
        new("ft3", Dimension.Volume, 0.3048 * 0.3048 * 0.3048),
        new("uF", Dimension.Capacitance, 1e-6),
        new("nF", Dimension.Capacitance, 1e-9),
        new("pF", Dimension.Capacitance, 1e-12),
    ];

    /// <summary>What people also write, by unit. The escapes are the ohm sign, the Greek mu, prime and double prime.</summary>
    private static readonly (string Unit, string Also)[] Aliases =
    [
        ("ft", "feet foot ' \u2032"),
        ("in", "inch inches \" \u2033"),
        ("m", "metre metres meter meters"),
        ("ohm", "Ω \u2126 ohms Ohm"),
        ("milliohm", "mohm"),
        ("kohm", "kΩ k\u2126 kohms kilohm kilohms"),
        ("Mohm", "MΩ M\u2126 megohm megohms"),
        ("V", "v volt volts"),
        ("A", "amp amps"),
        ("mA", "ma"),
        ("VA", "va"),
        ("Hz", "hz"),
        ("gpm", "GPM"),
        ("psi", "PSI"),
        ("s", "sec seconds"),
        ("min", "mins minute minutes"),
        ("h", "hr hour hours"),
        ("C", "°C degC"),
        ("F", "°F degF"),
        ("L/s", "l/s"),
        ("L/min", "l/min"),
        ("m3/s", "m³/s"),
        ("m3/h", "m³/h"),
        ("m2", "m²"),
        ("ft2", "ft²"),
        ("acre", "acres"),
        ("m3", "m³"),
        ("L", "l litre litres liter liters"),
        ("gal", "gallon gallons"),
        ("ft3", "ft³"),
        ("uF", "µF \u03bcF"),
    ];

    private static readonly Dictionary<string, Unit> ByName = All.ToDictionary(u => u.Name, StringComparer.Ordinal);

    private static readonly Dictionary<string, Unit> ByAlias = Aliases
        .SelectMany(a => a.Also.Split(' '), (a, also) => (also, a.Unit))
        .ToDictionary(a => a.also, a => ByName[a.Unit], StringComparer.Ordinal);

    /// <summary>Reads "31.5 ohm" as a value in SI units of <paramref name="dimension"/>, without regard to culture.</summary>
    /// <returns>The SI value, or a problem that names the text and the units that would do.</returns>
    public static Outcome<double> Parse(string text, Dimension dimension)
    {
        var read = Parse(text, [dimension]);
        return read.Succeeded ? read.Value.Si : read.Problem!;
    }

    /// <summary>Reads a value whose unit says which of the dimensions it has; the first is the one an example is given for.</summary>
    public static Outcome<(double Si, Dimension Dimension)> Parse(string text, IReadOnlyList<Dimension> dimensions)
    {
        var trimmed = text.Trim().Replace('\u2212', '-');
        var split = 0;
        while (split < trimmed.Length && (char.IsAsciiDigit(trimmed[split]) || trimmed[split] is '.' or '-' or '+'
            || IsExponent(trimmed, split)))
        {
            split++;
        }

        var (number, name, place) = (trimmed[..split], trimmed[split..].Trim(), Problem.Quote(text));
        if (dimensions is [Dimension.Length] && Fraction(trimmed) is { } fraction)
        {
            (number, name) = (fraction.Number.ToString("R", CultureInfo.InvariantCulture), fraction.Unit);
        }

        if (!double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var parsed))
        {
            return new Problem(place, "has no number in front", $"Write a number and a unit, for example {Example(dimensions[0])}");
        }

        if (!double.IsFinite(parsed))
        {
            return new Problem(place, "has a number that is too large to be one", "Check the number and the unit");
        }

        if (name.Length == 0)
        {
            return new Problem(place, "has no unit", $"Write the unit after the number, for example {Example(dimensions[0])}");
        }

        if (name.Length > 1 && name[0] == ',' && char.IsAsciiDigit(name[1]))
        {
            return new Problem(place, "has a comma in its number", $"Write a point for decimals and nothing between thousands: \"{number}.{name[1..]}\" or \"{number}{name[1..]}\"");
        }

        if (Find(name) is not { } unit || !dimensions.Contains(unit.Dimension))
        {
            return dimensions is [var only]
                ? new Problem(place, $"ends in {Problem.Quote(name)}, which is not a unit of {Name(only)}", $"Use one of: {Choices(only)}")
                : new Problem(place, $"ends in {Problem.Quote(name)}, which is no unit that can stand here", $"Use one of: {string.Join("; ", dimensions.Select(d => $"{Choices(d)} for {Name(d)}"))}");
        }

        var si = (parsed + unit.Offset) * unit.Factor;
        return unit.Dimension == Dimension.Temperature && si < 0 ? new Problem(place, "is below absolute zero", "Check the sign and the unit")
            : Math.Abs(si) > Most(unit.Dimension) ? new Problem(place, $"is more {Name(unit.Dimension)} than any property has", "Check the number and the unit")
            : (si, unit.Dimension);
    }

    /// <summary>In SI: far above all that is measured in a garden, and small enough to compute with.</summary>
    private static double Most(Dimension dimension) => dimension switch
    {
        Dimension.Length => 1e9,
        Dimension.Resistance => 1e15,
        Dimension.Voltage or Dimension.Current => 1e8,
        _ => 1e12,
    };

    /// <summary>The SI value in the named unit. The name must exist: a wrong one is a bug.</summary>
    public static double In(double si, string unit) => (si / ByName[unit].Factor) - ByName[unit].Offset;

    /// <summary>The number in the named unit as an SI value.</summary>
    public static double From(double number, string unit) => (number + ByName[unit].Offset) * ByName[unit].Factor;

    /// <summary>What the named unit measures. The name must exist: a wrong one is a bug.</summary>
    public static Dimension DimensionOf(string unit) => ByName[unit].Dimension;

    /// <summary>The dimension's name as a reader would say it.</summary>
    public static string Name(Dimension dimension) => dimension switch
    {
        Dimension.ApparentPower => "apparent power",
        _ => dimension.ToString().ToLowerInvariant(),
    };

    /// <summary>Sizes are written as fractions: "5/8 in", "1 1/2 in", "1-1/2 in".</summary>
    private static (double Number, string Unit)? Fraction(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        if (slash <= 0)
        {
            return null;
        }

        var end = slash + 1;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
        {
            end++;
        }

        var parts = text[..slash].Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries);
        return parts.Length is 1 or 2 && Array.TrueForAll(parts, p => Whole(p) is not null) && char.IsAsciiDigit(text[0]) && Whole(text[(slash + 1)..end]) is > 0 and var below
            ? ((parts.Length == 2 ? Whole(parts[0])!.Value : 0) + ((double)Whole(parts[^1])!.Value / below), text[end..].Trim())
            : null;
    }

    private static int? Whole(string digits) => int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var whole) ? whole : null;

    private static Unit? Find(string name) => ByName.GetValueOrDefault(name) ?? ByAlias.GetValueOrDefault(name);

    private static string Choices(Dimension dimension) =>
        string.Join(", ", All.Where(u => u.Dimension == dimension).Select(u => u.Name));

    private static string Example(Dimension dimension) => $"\"12 {All.First(u => u.Dimension == dimension).Name}\"";

    private static bool IsExponent(string text, int at) =>
        text[at] is 'e' or 'E' && at > 0 && at + 1 < text.Length && (char.IsAsciiDigit(text[at + 1]) || text[at + 1] is '-' or '+');

    private sealed record Unit(string Name, Dimension Dimension, double Factor, double Offset = 0);
}
