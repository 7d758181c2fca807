using System.Text.Json;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Reads and writes the header of a line.</summary>
internal static class HeadText
{
    /// <summary>The only format of the envelope so far.</summary>
    public const int Format = 1;

    private const int LongestName = 200;

    public static byte[] Write(Header header) => BodyText.Json(json =>
    {
        json.WriteStartObject();
        json.WriteNumber("format", Format);
        json.WriteString("property", header.Property);
        json.WriteString("writer", header.Id.Writer);
        json.WriteNumber("seq", header.Id.Seq);
        json.WriteString("prev", header.Previous);
        json.WriteString("body", header.BodyHash);
        json.WriteString("noted", header.Noted.ToString());
        json.WriteEndObject();
    });

    /// <summary>Reads a header that is known to be sound JSON and to be an object.</summary>
    public static Header? Read(ReadOnlyMemory<byte> head, string place, List<Problem> problems)
    {
        using var document = JsonDocument.Parse(head);
        var found = new List<Problem>();
        var fields = new Fields(document.RootElement, place, found);
        if (fields.Whole("format", least: 1) is var format && format != Format && found.Count == 0)
        {
            problems.Add(new Problem(
                place,
                $"is of format {format}, which this version of underturf does not know",
                "Read the log with a newer version"));
            return null;
        }

        var header = Read(fields, head);
        fields.ReportUnknown("head");
        problems.AddRange(found);
        return found.Exists(p => p.Severity == Severity.Error) ? null : header;
    }

    /// <summary>Whether a property or writer id will do; a control character or a page of text is a mistake.</summary>
    public static bool IsName(string text) =>
        text.Length is > 0 and <= LongestName && !text.Any(char.IsControl) && text.Trim().Length == text.Length;

    private static Header Read(Fields fields, ReadOnlyMemory<byte> head) => new(
        Name(fields, "property"),
        new EntryId(Name(fields, "writer"), Seq(fields)),
        Previous(fields),
        fields.Hash("body"),
        Noted(fields))
    {
        Hash = Sha256Hex.Of(head.Span),
    };

    private static string Name(Fields fields, string name)
    {
        var text = fields.Text(name);
        if (text.Length > 0 && !IsName(text))
        {
            fields.Wrong(name, "is not an id", $"Write up to {LongestName} characters without control characters or blanks at its ends");
        }

        return text;
    }

    private static long Seq(Fields fields)
    {
        if (fields.Find("seq") is { ValueKind: JsonValueKind.Number } element
            && element.TryGetInt64(out var seq)
            && seq is >= 1 and <= MostSeq)
        {
            return seq;
        }

        fields.Wrong("seq", "is not the entry's number", "Count a writer's entries 1, 2, 3 and so on");
        return 1;
    }

    private static string Previous(Fields fields)
    {
        var text = fields.OptionalText("prev");
        if (text is null || (text.Length > 0 && !Sha256Hex.IsWellFormed(text)))
        {
            fields.Wrong(
                "prev",
                "is not the hash of a header",
                "Write the SHA-256 of the writer's previous head as 64 lower-case digits, or \"\" for the first");
        }

        return text ?? "";
    }

    private static HybridTime Noted(Fields fields)
    {
        var text = fields.Text("noted");
        if (!HybridTime.TryParse(text, out var noted) && text.Length > 0)
        {
            fields.Wrong(
                "noted",
                "is not a time of noting",
                "Write UTC and a counter, for example \"2031-04-02T15:12:00.000Z/0\"");
        }

        return noted;
    }

    /// <summary>2^53 - 1: what every JSON reader keeps exactly.</summary>
    private const long MostSeq = 9007199254740991;
}
