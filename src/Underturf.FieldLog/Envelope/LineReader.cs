using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Reads one line on its own: is it whole and unchanged, who wrote it, what does it say. The chain is not its business.</summary>
internal sealed class LineReader(KindCatalogue kinds)
{
    /// <summary>1 MiB: a thousand times a long entry; what is longer is not a line of a log.</summary>
    public const int LongestLine = 1 << 20;

    private readonly BodyReader bodies = new(kinds);

    /// <summary>The entry of a line, or nothing and the reason among <paramref name="problems"/>.</summary>
    /// <param name="line">The bytes without line end.</param>
    public Entry? Read(ReadOnlyMemory<byte> line, string place, List<Problem> problems)
    {
        if (line.Length > LongestLine)
        {
            problems.Add(new Problem(
                place,
                $"is {line.Length} bytes long; a line may have {LongestLine}",
                "Look for a lost line end or a picture pasted in; photos go in by their SHA-256"));
            return null;
        }

        if (SoundJson.Check(line.Span, place) is { } unsound)
        {
            problems.Add(unsound);
            return null;
        }

        if (LineForm.Split(line) is not { } parts)
        {
            problems.Add(StrayLine.Explain(line, place));
            return null;
        }

        return Sha256Hex.Of(parts.Covered.Span) == parts.Digest ? ReadSealed(line, parts, place, problems) : Changed(place, problems);
    }

    private static Entry? Changed(string place, List<Problem> problems)
    {
        problems.Add(new Problem(
            place,
            "does not match its digest: it was changed after it was sealed",
            "Take the line from another copy with `underturf merge`, or note the fact again"));
        return null;
    }

    private Entry? ReadSealed(ReadOnlyMemory<byte> line, LineParts parts, string place, List<Problem> problems)
    {
        if (HeadText.Read(parts.Head, place, problems) is not { } header)
        {
            return null;
        }

        var at = header.Noted.Moment;
        if (LineForm.IsErased(line.Span))
        {
            return new Entry(header, "", 0, null, at, line);
        }

        if (Sha256Hex.Of(parts.Body.Span) != header.BodyHash)
        {
            problems.Add(new Problem(
                place,
                "has another body than its head was made for",
                "Take the line from another copy with `underturf merge`, or note the fact again"));
            return null;
        }

        var id = header.Id.ToString();
        var body = bodies.Read(parts.Body, place == id ? id : $"{place}, {id}", problems);
        return new Entry(header, body.Kind, body.Version, body.Fact, body.At ?? at, line);
    }
}
