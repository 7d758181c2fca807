using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Reads and writes what an instrument showed.</summary>
internal static class ShownText
{
    public const string OverRange = "over range";

    /// <summary>What meters print when a value is more than they can show.</summary>
    private static readonly string[] Displayed = [OverRange, "OL", "O.L", "0L", "0.L"];

    /// <summary>What instruments of this trade show; the first is the one an example is given for.</summary>
    private static readonly Dimension[] Dimensions =
    [
        Dimension.Resistance, Dimension.Voltage, Dimension.Current, Dimension.Flow, Dimension.Pressure, Dimension.Frequency,
        Dimension.Time, Dimension.Temperature, Dimension.Length, Dimension.Capacitance, Dimension.ApparentPower, Dimension.Area, Dimension.Volume,
    ];

    public static Outcome<Shown> Parse(string text)
    {
        if (Displayed.Contains(text.Trim(), StringComparer.OrdinalIgnoreCase))
        {
            return Shown.OverRange;
        }

        var read = Units.Parse(text, Dimensions);
        return !read.Succeeded ? read.Problem! with { Remedy = $"{read.Problem!.Remedy}, or \"{OverRange}\"" }
            : BelowNothing(text, read.Value.Si, read.Value.Dimension) is { } problem ? problem
            : new Shown(new Quantity(read.Value.Si, read.Value.Dimension, text));
    }

    public static string Write(Shown shown) => shown.Value is { } value ? value.Text : OverRange;

    private static Problem? BelowNothing(string text, double si, Dimension dimension) => dimension switch
    {
        Dimension.Voltage or Dimension.Current or Dimension.Pressure => null,
        _ when si >= 0 => null,
        Dimension.Resistance => new Problem(
            $"'{text}'",
            "is less than no resistance",
            "A meter that shows this sees a voltage on the wire: note the volts, or reverse the leads and read again"),
        _ => new Problem(
            $"'{text}'",
            $"is less than no {Units.Name(dimension)}",
            "Note it again without the minus sign, or as text under 'note'"),
    };
}
