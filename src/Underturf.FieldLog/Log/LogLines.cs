using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Cuts bytes into lines and reads each on its own.</summary>
internal sealed class LogLines(KindCatalogue kinds)
{
    internal const byte LineFeed = (byte)'\n', CarriageReturn = (byte)'\r';

    private readonly LineReader reader = new(kinds);

    internal static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    public static string Place(int number) => $"line {number}";

    public static bool IsBlank(ReadOnlySpan<byte> line) => !line.ContainsAnyExcept(" \t\r"u8);

    /// <summary>A line without byte-order mark and carriage return, which editors add and nobody means.</summary>
    public static ReadOnlyMemory<byte> Bare(ReadOnlyMemory<byte> raw)
    {
        var content = raw.Span.StartsWith(ByteOrderMark) ? raw[ByteOrderMark.Length..] : raw;
        return content.Span.EndsWith([CarriageReturn]) ? content[..^1] : content;
    }

    public List<LogLine> Read(ReadOnlyMemory<byte> bytes, List<Problem> problems)
    {
        var pass = new LinePass(reader, bytes, problems);
        while (pass.Next())
        {
        }

        return pass.End();
    }

    public static IEnumerable<ReadOnlyMemory<byte>> Cut(ReadOnlyMemory<byte> bytes)
    {
        var rest = bytes;
        while (rest.Length > 0)
        {
            var end = rest.Span.IndexOf(LineFeed);
            yield return end < 0 ? rest : rest[..end];
            rest = end < 0 ? default : rest[(end + 1)..];
        }
    }
}
