using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Reads and writes what an instrument showed.</summary>
internal static class ShownText
{
    public const string OverRange = "over range";

    /// <summary>How <see cref="Units"/> begins the remedy for an unknown unit.</summary>
    private const string UnitRemedy = "Use one of: ";

    /// <summary>What instruments of this trade show; the first is the one an example is given for.</summary>
    private static readonly Dimension[] Dimensions =
    [
        Dimension.Resistance, Dimension.Voltage, Dimension.Current, Dimension.Flow, Dimension.Pressure, Dimension.Frequency,
        Dimension.Time, Dimension.Temperature, Dimension.Length, Dimension.Capacitance, Dimension.ApparentPower, Dimension.Area,
    ];

    public static Outcome<Shown> Parse(string text)
    {
        if (text == OverRange)
        {
            return Shown.OverRange;
        }

        foreach (var dimension in Dimensions)
        {
            var si = Units.Parse(text, dimension);
            if (si.Succeeded)
            {
                return BelowNothing(text, si.Value, dimension) is { } problem
                    ? problem
                    : new Shown(new Quantity(si.Value, dimension, text));
            }
        }

        return Refuse(text);
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

    /// <summary>
    /// A text without number or unit is refused in the words for resistance, the usual reading; a unit that none knows, with all
    /// that would do.
    /// </summary>
    private static Problem Refuse(string text)
    {
        var first = Units.Parse(text, Dimension.Resistance).Problem!;
        if (!first.Remedy.StartsWith(UnitRemedy, StringComparison.Ordinal))
        {
            return first with { Remedy = $"{first.Remedy}, or \"{OverRange}\"" };
        }

        var choices = Dimensions.Select(d => $"{Units.Parse("1 ?", d).Problem!.Remedy[UnitRemedy.Length..]} for {Units.Name(d)}");
        return new Problem(
            $"'{text}'",
            "has no unit that an instrument shows",
            $"{UnitRemedy}{string.Join("; ", choices)}; or \"{OverRange}\"");
    }
}
