using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>One pass over the lines of a log, as far as it has come.</summary>
/// <param name="problems">Where what is wrong with them goes.</param>
internal sealed class LinePass(LineReader reader, ReadOnlyMemory<byte> bytes, List<Problem> problems)
{
    private readonly List<LogLine> lines = [];
    private readonly IEnumerator<ReadOnlyMemory<byte>> cut = LogLines.Cut(bytes).GetEnumerator();
    private readonly bool wide = WideText.Notice(bytes.Span, problems);

    /// <summary>Reads a line more. False where there is none.</summary>
    public bool Next()
    {
        if (!cut.MoveNext())
        {
            return false;
        }

        var (raw, found) = (cut.Current, new List<Problem>());
        lines.Add(ReadLine(raw, lines.Count + 1, found));
        if (IsCutOff(raw, bytes))
        {
            found = [CutOff(lines[^1])];
        }

        if (!(wide && WideText.IsPart(raw.Span)))
        {
            problems.AddRange(found);
        }

        return true;
    }

    /// <summary>All of them, once there is no more.</summary>
    public List<LogLine> End()
    {
        NoticeForm(lines, bytes.Span, problems);
        return lines;
    }

    private LogLine ReadLine(ReadOnlyMemory<byte> raw, int number, List<Problem> problems)
    {
        if (LogLines.IsBlank(raw.Span))
        {
            return new LogLine(number, raw, null);
        }

        return new LogLine(number, raw, reader.Read(Content(raw, number, problems), LogLines.Place(number), problems));
    }

    private static ReadOnlyMemory<byte> Content(ReadOnlyMemory<byte> raw, int number, List<Problem> problems)
    {
        if (raw.Span.StartsWith(LogLines.ByteOrderMark))
        {
            problems.Add(new Problem(
                LogLines.Place(number),
                "begins with a byte-order mark, which an editor put there",
                "Save the log as plain UTF-8 without one; every entry counts all the same"));
        }

        return LogLines.Bare(raw);
    }

    /// <summary>Whether the file ends within this line: no line feed, and not sound as it is.</summary>
    private static bool IsCutOff(ReadOnlyMemory<byte> raw, ReadOnlyMemory<byte> bytes) =>
        bytes.Span[^1] != LogLines.LineFeed
        && raw.Length <= LineReader.LongestLine
        && raw.Span.Overlaps(bytes.Span[^1..])
        && SoundJson.Check(LogLines.Bare(raw).Span, "") is not null;

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

        var returns = lines.Count(line => !line.IsBlank && line.Bytes.Span.EndsWith([LogLines.CarriageReturn]));
        if (returns > 0)
        {
            problems.Add(new Problem(
                "line ends",
                $"{returns} of {lines.Count} lines end with a carriage return",
                "Save the log with plain line feeds; every entry counts all the same"));
        }

        if (lines is [.., { Entry: not null } last] && bytes[^1] != LogLines.LineFeed)
        {
            problems.Add(new Problem(
                last.Place, "is whole but has no line end", "Nothing needs doing; add a line feed before the next entry", Severity.Notice));
        }
    }
}
