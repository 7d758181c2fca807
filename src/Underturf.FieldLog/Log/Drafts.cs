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
            problems.Add(new Problem("line 1", "is where the first note should be, but there is none", "Write one note a line, for example {\"kind\":\"told\",\"who\":\"…\",\"text\":\"…\"}"));
        }

        return new Drafts(notes, problems);
    }

    private static Draft? ReadOne(ReadOnlyMemory<byte> line, int number, KindCatalogue kinds, List<Problem> problems)
    {
        var place = LogLines.Place(number);
        var unsound = line.Length > LineReader.LongestLine
            ? new Problem(place, $"is {line.Length} bytes long; a note may have {LineReader.LongestLine}", "Look for a lost line end; photos go in by their SHA-256")
            : SoundJson.Check(line.Span, place);
        if (unsound is not null)
        {
            problems.Add(unsound);
            return null;
        }

        var body = WithVersion(line, kinds);
        var reading = new BodyReader(kinds).Read(body, place, problems);
        if (reading.Fact is null && reading.Kind.Length > 0 && reading.Version > 0 && Unknown(reading, kinds))
        {
            problems.Add(new Problem(
                place, $"is of a kind or version that cannot be sealed here: '{reading.Kind}' {reading.Version}", $"The kinds are: {string.Join(", ", kinds.All.Select(k => k.Kind))}"));
        }

        return reading.Fact is { } fact ? new Draft(number, body, fact) : null;
    }

    private static bool Unknown(BodyReading reading, KindCatalogue kinds) => kinds.Find(reading.Kind) is not { } codec || codec.Version < reading.Version;

    private static ReadOnlyMemory<byte> WithVersion(ReadOnlyMemory<byte> line, KindCatalogue kinds)
    {
        using var document = JsonDocument.Parse(line);
        var root = document.RootElement;
        if (root.ValueKind != JsonValueKind.Object
            || root.TryGetProperty("version", out _)
            || !root.TryGetProperty("kind", out var kind)
            || kind.ValueKind != JsonValueKind.String
            || kinds.Find(kind.GetString()!) is not { } codec)
        {
            return line;
        }

        var open = line.Span.IndexOf((byte)'{') + 1;
        return Encoding.UTF8.GetBytes($"{{\"version\":{codec.Version},{Encoding.UTF8.GetString(line.Span[open..])}");
    }
}
