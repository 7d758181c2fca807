using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>A reading that is odd as it stands and usual in another unit was most likely noted with the wrong one.</summary>
internal static class UnitSlips
{
    /// <summary>Spreads from the usual beyond which a reading is odd, and within which it is usual.</summary>
    private const double Odd = 3.5;

    private const double Usual = 2;

    public static IEnumerable<Problem> Of(Observed<ReadingFact> note, WaterProbe probe, Quantity value, PracticeBook book)
    {
        if (UsualOf(probe.Measures, book.Water.Usual) is not { } usual || value.Si <= 0)
        {
            yield break;
        }

        var (number, unit) = Parts(value.Text);
        if (number is null || Spreads(value.Si, usual) < Odd)
        {
            yield break;
        }

        foreach (var other in Units(value.Dimension).Where(u => u != unit && Spreads(Quantities.Units.From(number.Value, u), usual) < Usual))
        {
            yield return new Problem(note.Entry.ToString(), $"{probe.Name} of {value.Text} would be very {(value.Si > usual.Median ? "much" : "little")}, {number} {other} would be usual", "If the unit was wrong, strike it and note it again; if not, read once more", Severity.Notice);
            yield break;
        }
    }

    private static Spread? UsualOf(WaterMeasure measures, WaterUsual usual) => measures switch
    {
        WaterMeasure.StaticPressure or WaterMeasure.RunningPressure => InPascals(usual.StaticKilopascals),
        WaterMeasure.OutletPressure => InPascals(usual.OutletKilopascals),
        _ => null,
    };

    private static Spread InPascals(Spread kilopascals) => kilopascals with { Median = Quantities.Units.From(kilopascals.Median, "kPa") };

    private static double Spreads(double si, Spread usual) => Math.Abs(Math.Log(si / usual.Median)) / usual.LogSpread;

    private static string[] Units(Dimension dimension) => dimension == Dimension.Pressure ? ["psi", "kPa", "bar"] : [];

    private static (double? Number, string Unit) Parts(string text)
    {
        var trimmed = text.Trim();
        var unit = trimmed.Length - trimmed.AsSpan().TrimEnd("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ").Length;
        return double.TryParse(trimmed[..^unit], System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out var number)
            ? (number, trimmed[^unit..])
            : (null, string.Empty);
    }
}
