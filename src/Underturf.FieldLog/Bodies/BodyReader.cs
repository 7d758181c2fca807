using System.Text.Json;
using System.Text.Json.Nodes;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>What a body says.</summary>
/// <param name="At">The body's own time, where it gives one.</param>
internal sealed record BodyReading(string Kind, int Version, Fact? Fact, DateTimeOffset? At);

/// <summary>
/// Reads bodies that are known to be sound JSON: kind, version and time first, then the fields of the kind, lifted where older.
/// </summary>
internal sealed class BodyReader(KindCatalogue kinds)
{
    private static readonly BodyReading Nothing = new("", 0, null, null);

    /// <summary>
    /// Reads a body. A fact is given only where nothing in it was wrong: half a fact would be worse than none, since what is
    /// missing looks like what was never said.
    /// </summary>
    public BodyReading Read(ReadOnlyMemory<byte> body, string place, List<Problem> problems)
    {
        using var document = JsonDocument.Parse(body);
        if (document.RootElement.ValueKind != JsonValueKind.Object)
        {
            problems.Add(new Problem(place, "has a body that is not an object", "Write {\"kind\": …, \"version\": …, …}"));
            return Nothing;
        }

        var found = new List<Problem>();
        var frame = new Fields(document.RootElement, place, found);
        var kind = frame.Text("kind");
        var version = frame.Whole("version", least: 1);
        var at = Time(frame);
        if (found.Count > 0)
        {
            problems.AddRange(found);
            return new BodyReading(kind, version, null, at);
        }

        var fact = Known(kind, version, place, found) is { } codec ? ReadFact(document.RootElement, codec, version, place, found) : null;
        problems.AddRange(found);
        return new BodyReading(kind, version, found.Any(p => p.Severity == Severity.Error) ? null : fact, at);
    }

    private static DateTimeOffset? Time(Fields frame)
    {
        if (frame.OptionalText("at") is not { } text)
        {
            return null;
        }

        if (MomentText.TryParse(text, out var at))
        {
            return at;
        }

        frame.Wrong(
            "at",
            $"is '{(text.Length <= 40 ? text : text[..37] + "...")}'",
            "Write date, time and offset, for example \"2031-04-02T09:12-06:00\"");
        return null;
    }

    private KindCodec? Known(string kind, int version, string place, List<Problem> problems)
    {
        var codec = kinds.Find(kind);
        if (codec is not null && version <= codec.Version)
        {
            return codec;
        }

        var what = codec is null ? $"is of the kind '{kind}'" : $"is of version {version} of '{kind}'";
        problems.Add(new Problem(
            place,
            $"{what}, which this version of underturf does not know; it is kept but not used",
            "Read the log with a newer version",
            Severity.Notice));
        return null;
    }

    private static Fact? ReadFact(JsonElement body, KindCodec codec, int version, string place, List<Problem> problems)
    {
        if (version == codec.Version)
        {
            return ReadFields(body, codec, place, problems);
        }

        var lifted = JsonObject.Create(body)!;
        foreach (var lift in codec.Lifts.Skip(version - 1))
        {
            if (lift(lifted) is { } problem)
            {
                problems.Add(problem with { Place = $"{place}, {problem.Place}" });
                return null;
            }
        }

        using var document = JsonDocument.Parse(lifted.ToJsonString());
        return ReadFields(document.RootElement, codec, place, problems);
    }

    private static Fact ReadFields(JsonElement body, KindCodec codec, string place, List<Problem> problems)
    {
        var fields = new Fields(body, place, problems);
        foreach (var frame in BodyText.Frame)
        {
            fields.Find(frame);
        }

        var fact = codec.Read(fields);
        fields.ReportUnknown(codec.Kind);
        return fact;
    }
}
