using System.Text;
using System.Text.Json;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>One note that is not sealed yet.</summary>
/// <param name="Line">Where it stands in the file of notes, counted from 1.</param>
/// <param name="Body">The bytes to seal.</param>
/// <param name="Fact">What it says.</param>
public sealed record Draft(int Line, ReadOnlyMemory<byte> Body, Fact Fact);

/// <summary>
/// Notes as bare bodies, one a line, for sealing: <c>{"kind":"reading","how":"station ohms",…}</c>. The version may be left
/// out; the present one is then put in.
/// </summary>
/// <param name="Notes">The good ones.</param>
/// <param name="Problems">What is wrong with the others, and notices.</param>
public sealed record Drafts(IReadOnlyList<Draft> Notes, IReadOnlyList<Problem> Problems)
{
    /// <summary>Reads notes. A bad one is a problem with its line; every other one is given.</summary>
    public static Drafts Read(ReadOnlyMemory<byte> bytes, KindCatalogue? kinds = null)
    {
        var known = kinds ?? KindCatalogue.Standard;
        var notes = new List<Draft>();
        var problems = new List<Problem>();
        var wide = WideText.Notice(bytes.Span, problems);
        var number = 0;
        foreach (var raw in LogLines.Cut(bytes))
        {
            number++;
            if (LogLines.IsBlank(raw.Span) || (wide && WideText.IsPart(raw.Span)))
            {
                continue;
            }

            if (ReadOne(LogLines.Bare(raw), number, known, problems) is { } draft)
            {
                notes.Add(draft);
            }
        }

        if (notes.Count == 0 && problems.Count == 0)
        {
            problems.Add(new Problem(
                "line 1",
                "is where the first note should be, but there is none",
                "Write one note a line, for example {\"kind\":\"told\",\"who\":\"…\",\"text\":\"…\"}"));
        }

        return new Drafts(notes, problems);
    }

    private static Draft? ReadOne(ReadOnlyMemory<byte> line, int number, KindCatalogue kinds, List<Problem> problems)
    {
        var place = LogLines.Place(number);
        var unsound = line.Length > LineReader.LongestLine
            ? new Problem(
                place,
                $"is {line.Length} bytes long; a note may have {LineReader.LongestLine}",
                "Look for a lost line end; photos go in by their SHA-256")
            : SoundJson.Check(line.Span, place);
        if (unsound is not null)
        {
            problems.Add(unsound);
            return null;
        }

        using var document = JsonDocument.Parse(line);
        if (Strange(document.RootElement, place, kinds) is { } strange)
        {
            problems.Add(strange);
            return null;
        }

        var body = WithVersion(line, document.RootElement, kinds);
        return new BodyReader(kinds).Read(body, place, problems).Fact is { } fact ? new Draft(number, body, fact) : null;
    }

    /// <summary>A log keeps kinds that it does not know, but nobody notes one.</summary>
    private static Problem? Strange(JsonElement body, string place, KindCatalogue kinds)
    {
        if (KindOf(body) is not { } kind)
        {
            return null;
        }

        if (kinds.Find(kind) is not { } codec)
        {
            return new Problem(
                $"{place}, field 'kind'",
                "names a kind that cannot be sealed here",
                $"Use one of: {string.Join(", ", kinds.All.Select(k => k.Kind))}");
        }

        var newer = body.TryGetProperty("version", out var version)
            && version.ValueKind == JsonValueKind.Number
            && version.GetDouble() > codec.Version;
        return newer
            ? new Problem(
                $"{place}, field 'version'",
                "is newer than what can be sealed here",
                $"Write version {codec.Version} of '{kind}', or leave the version out")
            : null;
    }

    private static string? KindOf(JsonElement body) =>
        body.ValueKind == JsonValueKind.Object && body.TryGetProperty("kind", out var kind) && kind.ValueKind == JsonValueKind.String
            ? kind.GetString()
            : null;

    private static ReadOnlyMemory<byte> WithVersion(ReadOnlyMemory<byte> line, JsonElement body, KindCatalogue kinds)
    {
        if (KindOf(body) is not { } kind || kinds.Find(kind) is not { } codec || body.TryGetProperty("version", out _))
        {
            return line;
        }

        var open = line.Span.IndexOf((byte)'{') + 1;
        return Encoding.UTF8.GetBytes($"{{\"version\":{codec.Version},{Encoding.UTF8.GetString(line.Span[open..])}");
    }
}
