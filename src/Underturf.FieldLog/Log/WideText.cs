using System.Text.Unicode;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Recognises a file saved as UTF-16 or UTF-32, so that one problem says so instead of one a line.</summary>
internal static class WideText
{
    private const int Sample = 512;

    /// <summary>Adds the problem where the bytes look so: a wide byte-order mark, or more than a third of the first bytes zero.</summary>
    public static bool Notice(ReadOnlySpan<byte> bytes, List<Problem> problems)
    {
        var head = bytes[..Math.Min(bytes.Length, Sample)];
        var marked = head.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || head.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]);
        var wide = marked || head.Count((byte)0) * 3 > head.Length;
        if (wide)
        {
            problems.Add(new Problem("line 1", "looks like UTF-16 or UTF-32, not UTF-8", "Save the file as UTF-8 and read it again"));
        }

        return wide;
    }

    /// <summary>Whether a line's trouble is explained by the encoding.</summary>
    public static bool IsPart(ReadOnlySpan<byte> line) => line.Contains((byte)0) || !Utf8.IsValid(line);
}
