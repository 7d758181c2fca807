using System.Text.Json;
using System.Text.Unicode;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>
/// Whether bytes are one JSON value that every reader understands alike: UTF-8, no repeated keys, no half characters, not nested
/// without end. What passes can be read afterwards without an exception.
/// </summary>
internal static class SoundJson
{
    /// <summary>No kind nests deeper than a list of positions in a body in a line; this leaves room for later kinds.</summary>
    public const int MostLevels = 24;

    /// <summary>Why the bytes will not do, or nothing where they will.</summary>
    public static Problem? Check(ReadOnlySpan<byte> json, string place)
    {
        if (!Utf8.IsValid(json))
        {
            return new Problem(
                place,
                "holds bytes that are not UTF-8",
                "Save the notes as UTF-8; take this line from another copy or note it again");
        }

        try
        {
            return Walk(json, place);
        }
        catch (JsonException e)
        {
            return JsonSlip.Of(json, (int)(e.BytePositionInLine ?? 0), place);
        }
    }

    private static Problem? Walk(ReadOnlySpan<byte> json, string place)
    {
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = MostLevels + 8 });
        var keys = new Stack<HashSet<string>>();
        while (reader.Read())
        {
            var problem = reader.TokenType switch
            {
                JsonTokenType.StartObject => Open(keys, reader.CurrentDepth, place),
                JsonTokenType.EndObject => Close(keys),
                JsonTokenType.StartArray => TooDeep(reader.CurrentDepth, place),
                JsonTokenType.PropertyName => Key(ref reader, keys.Peek(), place),
                JsonTokenType.String when reader.ValueIsEscaped => Text(ref reader, out _) ? null : HalfCharacter(place),
                _ => null,
            };
            if (problem is not null)
            {
                return problem;
            }
        }

        return null;
    }

    private static Problem? Open(Stack<HashSet<string>> keys, int depth, string place)
    {
        keys.Push(new HashSet<string>(StringComparer.Ordinal));
        return TooDeep(depth, place);
    }

    private static Problem? Close(Stack<HashSet<string>> keys)
    {
        keys.Pop();
        return null;
    }

    private static Problem? Key(ref Utf8JsonReader reader, HashSet<string> seen, string place)
    {
        if (!Text(ref reader, out var name))
        {
            return HalfCharacter(place);
        }

        return seen.Add(name) ? null : new Problem(
            place,
            $"gives the field '{name}' twice",
            "Keep one of the two and note the entry again");
    }

    private static Problem? TooDeep(int depth, string place) => depth < MostLevels
        ? null
        : new Problem(
            place,
            $"is nested deeper than {MostLevels} levels",
            "No kind of entry nests so deep: note the fact again as docs/field-log.md says");

    private static bool Text(ref Utf8JsonReader reader, out string text)
    {
        try
        {
            text = reader.GetString() ?? "";
            return true;
        }
        catch (InvalidOperationException)
        {
            text = "";
            return false;
        }
    }

    private static Problem HalfCharacter(string place) =>
        new(place, "holds half of a character (a lone surrogate such as \\ud800)", "Write the character whole and note the entry again");
}
