using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>The step that a written number implies: "31.5 ohm" was read to a tenth, "3.2 kohm" to a hundred ohm.</summary>
internal static class DisplayStep
{
    public static double Si(Quantity quantity)
    {
        var text = quantity.Text.AsSpan().Trim();
        var end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] is '.' or '-' or '+'))
        {
            end++;
        }

        var point = text[..end].IndexOf('.');
        var decimals = point < 0 ? 0 : end - point - 1;
        var one = Units.Parse($"1 {text[end..].Trim()}", quantity.Dimension);
        return one.Succeeded ? one.Value * Math.Pow(10, -decimals) : 0;
    }
}
