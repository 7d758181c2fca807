using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Seals facts into entries. It has no clock and no memory: time and the writer's last header are given to it.</summary>
public static class Pen
{
    /// <summary>Seals a fact.</summary>
    /// <param name="last">The writer's last header in this log (<see cref="LogDocument.LastHeader"/>), or nothing for the first.</param>
    /// <param name="noted">When it is written down (<see cref="HybridTime.Next"/> after the latest in the log).</param>
    /// <param name="at">When it was so; the time of noting where nothing is given.</param>
    public static Outcome<Entry> Seal(
        string property,
        string writer,
        Header? last,
        HybridTime noted,
        Fact fact,
        DateTimeOffset? at = null,
        KindCatalogue? kinds = null) =>
        Seal(property, writer, last, noted, BodyText.Write(fact, at, kinds), kinds);

    /// <summary>Seals a body as it is, byte for byte. A body that could not be read back is refused with the reason.</summary>
    public static Outcome<Entry> Seal(
        string property, string writer, Header? last, HybridTime noted, ReadOnlyMemory<byte> body, KindCatalogue? kinds = null)
    {
        var id = new EntryId(writer, (last?.Id.Seq ?? 0) + 1);
        if (Refuse(property, id, last, noted, body) is { } refusal)
        {
            return refusal;
        }

        var header = new Header(property, id, last?.Hash ?? "", Sha256Hex.Of(body.Span), noted);
        var problems = new List<Problem>();
        var line = LineForm.Seal(HeadText.Write(header), body.Span);
        var entry = new LineReader(kinds ?? KindCatalogue.Standard).Read(line, id.ToString(), problems);
        if (problems.Find(p => p.Severity == Severity.Error) is { } problem)
        {
            return problem;
        }

        return entry is { Fact: not null } ? entry : problems.Find(_ => true) ?? new Problem(
            id.ToString(),
            "says nothing",
            "Write a fact of a known kind");
    }

    private static Problem? Refuse(string property, EntryId id, Header? last, HybridTime noted, ReadOnlyMemory<byte> body)
    {
        if (last is not null && (last.Property != property || last.Id.Writer != id.Writer))
        {
            throw new ArgumentException($"{last.Id} of '{last.Property}' is not the header before {id} of '{property}'", nameof(last));
        }

        if (!HeadText.IsName(property) || !HeadText.IsName(id.Writer))
        {
            return new Problem(
                id.ToString(),
                "has a property or writer that is not an id",
                "Use letters, digits and hyphens, for example \"writer-a\"");
        }

        if (!noted.IsWritable || (last is not null && noted.CompareTo(last.Noted) <= 0))
        {
            return new Problem(id.ToString(), $"was noted at {noted}, not after the entry before it", "Check the clock of the device");
        }

        return body.Span.ContainsAny((byte)'\n', (byte)'\r')
            ? new Problem(id.ToString(), "has a body of more than one line", "Write the body on one line")
            : SoundJson.Check(body.Span, id.ToString());
    }
}
