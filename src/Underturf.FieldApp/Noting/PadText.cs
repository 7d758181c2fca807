using System.Globalization;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>What stands in the field of a number pad: a number, whose unit is chosen beside it, a number with a unit of its own, or what a display prints over range.</summary>
public static class PadText
{
    private const string Alone = "Type the number alone: its unit is chosen beside it";

    /// <summary>Reads it, or says what to do. A unit that was typed is taken where it fits the reading.</summary>
    /// <param name="unit">The one that is chosen beside it.</param>
    /// <param name="units">Those that can be chosen.</param>
    public static Outcome<Shown> Read(string typed, string unit, IReadOnlyList<string> units)
    {
        var chosen = Shown.Parse($"{typed} {unit}");
        if (chosen.Succeeded || IsNumber(typed) || typed.Contains(','))
        {
            return chosen;
        }

        var own = Shown.Parse(typed);
        if (own is { Succeeded: true, Value.IsOverRange: true })
        {
            return own;
        }

        List<Dimension> asked = [.. units.Select(Units.DimensionOf).Distinct()];
        return Units.Parse(typed, asked).Succeeded ? own
            : own is { Succeeded: true, Value.Value.Dimension: var other }
                ? Unread(typed, $"Here {Units.Name(asked[0])} is asked for, not {Units.Name(other)}: type the number alone, or change what was read")
            : Unread(typed, typed.Any(char.IsAsciiDigit) ? Alone : $"{Alone}; or tap \"{NoteDraft.OverRange}\"");
    }

    private static bool IsNumber(string typed) => double.TryParse(typed.Replace('\u2212', '-'), NumberStyles.Float, CultureInfo.InvariantCulture, out _);

    private static Problem Unread(string typed, string remedy) => new(Problem.Quote(typed), "is not what the display shows", remedy);
}
