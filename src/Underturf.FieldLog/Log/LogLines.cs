using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Cuts bytes into lines and reads each on its own.</summary>
internal sealed class LogLines(KindCatalogue kinds)
{
    private const byte LineFeed = (byte)'\n', CarriageReturn = (byte)'\r';

    private readonly LineReader reader = new(kinds);

    private static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

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
        var lines = new List<LogLine>();
        var wide = WideText.Notice(bytes.Span, problems);
        foreach (var raw in Cut(bytes))
        {
            var found = new List<Problem>();
            lines.Add(ReadLine(raw, lines.Count + 1, found));
            if (IsCutOff(raw, bytes))
            {
                found = [CutOff(lines[^1])];
            }

            if (!(wide && WideText.IsPart(raw.Span)))
            {
                problems.AddRange(found);
            }
        }

        NoticeForm(lines, bytes.Span, problems);
        return lines;
    }

    private LogLine ReadLine(ReadOnlyMemory<byte> raw, int number, List<Problem> problems)
    {
        if (IsBlank(raw.Span))
        {
            return new LogLine(number, raw, null);
        }

        return new LogLine(number, raw, reader.Read(Content(raw, number, problems), Place(number), problems));
    }

    private static ReadOnlyMemory<byte> Content(ReadOnlyMemory<byte> raw, int number, List<Problem> problems)
    {
        if (raw.Span.StartsWith(ByteOrderMark))
        {
            problems.Add(new Problem(
                Place(number),
                "begins with a byte-order mark, which an editor put there",
                "Save the log as plain UTF-8 without one; every entry counts all the same"));
        }

        return Bare(raw);
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

    /// <summary>Whether the file ends within this line: no line feed, and not sound as it is.</summary>
    private static bool IsCutOff(ReadOnlyMemory<byte> raw, ReadOnlyMemory<byte> bytes) =>
        bytes.Span[^1] != LineFeed
        && raw.Length <= LineReader.LongestLine
        && raw.Span.Overlaps(bytes.Span[^1..])
        && SoundJson.Check(Bare(raw).Span, "") is not null;

    private static Problem CutOff(LogLine last) => new(
        last.Place,
        "is cut off: the file ends in the middle of it",
        "Take the line from another copy with `underturf merge`, or note the fact again");

    private static void NoticeForm(List<LogLine> lines, ReadOnlySpan<byte> bytes, List<Problem> problems)
    {
        var blank = lines.Where(line => line.IsBlank).ToList();
        if (blank.Count > 0)
        {
            var more = blank.Count == 1 ? "is blank" : $"is blank, and {blank.Count - 1} more lines are";
            problems.Add(new Problem(blank[0].Place, more, "Nothing needs doing; blank lines are passed over", Severity.Notice));
        }

        var returns = lines.Count(line => !line.IsBlank && line.Bytes.Span.EndsWith([CarriageReturn]));
        if (returns > 0)
        {
            problems.Add(new Problem(
                "line ends",
                $"{returns} of {lines.Count} lines end with a carriage return",
                "Save the log with plain line feeds; every entry counts all the same"));
        }

        if (lines is [.., { Entry: not null } last] && bytes[^1] != LineFeed)
        {
            problems.Add(new Problem(
                last.Place, "is whole but has no line end", "Nothing needs doing; add a line feed before the next entry", Severity.Notice));
        }
    }
}
