using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Slips that people make when they write JSON by hand, told by the byte at which a reader stops.</summary>
internal static class JsonSlip
{
    private const string OneALine = "Write one note a line, with no comma between notes and no brackets round them";

    /// <param name="at">Where the reader stopped, counted from 0.</param>
    public static Problem Of(ReadOnlySpan<byte> json, int at, string place)
    {
        var (here, before) = (at < json.Length ? json[at] : (byte)0, Before(json, at));
        return (here, before) switch
        {
            ((byte)'}' or (byte)']', (byte)',') => new Problem(place, $"has a comma before its closing {(here == '}' ? "brace" : "bracket")}, at byte {at + 1}", "Take that comma out: one stands between two fields, none after the last"),
            ((byte)',', (byte)'}') => new Problem(place, $"has a comma after its end, at byte {at + 1}", OneALine),
            _ when json.Trim(" \t"u8) is [(byte)'['] or [(byte)']', ..] => new Problem(place, "is a bracket by itself", OneALine),
            (not (byte)'"', (byte)'{' or (byte)',') when here == '\'' || char.IsAsciiLetter((char)here) => new Problem(place, $"has a field name without double quotation marks, at byte {at + 1}", "Write it in double quotation marks, for example \"kind\""),
            _ => new Problem(place, $"is not JSON from byte {at + 1} on", "Take the line from another copy with `underturf merge`, or note it again"),
        };
    }

    private static byte Before(ReadOnlySpan<byte> json, int at)
    {
        var text = json[..Math.Min(at, json.Length)].TrimEnd(" \t"u8);
        return text.IsEmpty ? (byte)0 : text[^1];
    }
}
