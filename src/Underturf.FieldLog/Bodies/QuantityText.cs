using System.Globalization;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>
/// The shortest text that reads back as exactly the same number: 73.152 m is written "240 ft", because that is what somebody
/// must have taped, and 0.1 m stays "0.1 m".
/// </summary>
internal static class QuantityText
{
    private static readonly string[] Precisions = ["G4", "G9", "R"];

    public static string Write(double si, Dimension dimension) =>
        UnitsOf(dimension)
            .SelectMany(unit => Precisions.Select(precision => Text(Units.In(si, unit), precision, unit)))
            .Where(text => Units.Parse(text, dimension) is { Succeeded: true } read && read.Value == si)
            .DefaultIfEmpty(Text(Units.In(si, UnitsOf(dimension)[0]), "R", UnitsOf(dimension)[0]))
            .MinBy(text => text.Length)!;

    public static string Write(WireSize size)
    {
        var square = size.AreaSquareMetres * 1e6;
        string[] forms = [.. Precisions.Select(p => Text(size.Awg, p, "AWG")), .. Precisions.Select(p => Text(square, p, "mm2"))];
        return forms
            .Where(text => WireSize.Parse(text) is { Succeeded: true } read && read.Value == size)
            .DefaultIfEmpty(forms[^1])
            .MinBy(text => text.Length)!;
    }

    /// <summary>The SI unit first, which reads back exactly, then those that people tape and read.</summary>
    private static string[] UnitsOf(Dimension dimension) => dimension switch
    {
        Dimension.Length => ["m", "ft", "in"],
        Dimension.Resistance => ["ohm", "kohm", "Mohm"],
        Dimension.Voltage => ["V"],
        Dimension.Current => ["A", "mA"],
        Dimension.ApparentPower => ["VA"],
        Dimension.Frequency => ["Hz"],
        Dimension.Flow => ["m3/s", "gpm", "L/min"],
        Dimension.Pressure => ["Pa", "psi", "kPa"],
        Dimension.Time => ["s", "min", "h"],
        Dimension.Temperature => ["K", "C", "F"],
        Dimension.Area => ["m2", "ha", "acre", "ft2"],
        Dimension.Volume => ["m3", "gal", "L", "ft3"],
        Dimension.Capacitance => ["nF", "uF", "pF"],
        _ => throw new ArgumentOutOfRangeException(nameof(dimension)),
    };

    private static string Text(double number, string precision, string unit) =>
        $"{number.ToString(precision, CultureInfo.InvariantCulture)} {unit}";
}
