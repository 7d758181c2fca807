using System.Text.Json;
using System.Text.RegularExpressions;
using Underturf.Quantities;

namespace Underturf.Property.Practice;

/// <summary>What the reader of JSON complains of, in the words of the book.</summary>
internal static partial class PracticeBookWords
{
    private const string Missing = "was missing required properties including: ";

    public static Problem Of(JsonException error)
    {
        var message = error.Message.Split(" Path:")[0].TrimEnd('.');
        var at = message.IndexOf(Missing, StringComparison.Ordinal);
        var reason = at >= 0 ? $"lacks {message[(at + Missing.Length)..].TrimEnd('.')}"
            : Unknown().Match(message) is { Success: true } unknown ? $"has a field '{unknown.Groups["it"].Value}', which no practice book has"
            : message.Contains("could not be converted", StringComparison.Ordinal) ? "is of another kind than the default book has there, for example text in the place of a number"
            : "is not JSON from here on: a comma, a quotation mark or a bracket is missing or too many";
        return new Problem($"practice book, line {error.LineNumber + 1}, {error.Path}", reason, "Correct it, or start from the default book: underturf book");
    }

    /// <summary>A file of another kind, by its fields; nothing where one of them is a book's.</summary>
    public static Problem? NoBook(ReadOnlySpan<byte> json)
    {
        var fields = Fields(json);
        var reason = fields switch
        {
            ["head", ..] => "is a field log, not a practice book",
            ["kind", ..] => "is a file of notes, not a practice book",
            _ when fields.Any(field => PracticeJson.Default.PracticeBook.Properties.Any(p => p.Name == field)) => null,
            _ => "is not one: no field of a practice book stands in it",
        };
        return reason is null ? null : new Problem("practice book", reason, "Name a practice book, or print the default one to edit it: underturf book > book.json");
    }

    /// <summary>The names of the outermost fields, as far as the file can be read.</summary>
    private static List<string> Fields(ReadOnlySpan<byte> json)
    {
        var fields = new List<string>();
        try
        {
            var reader = new Utf8JsonReader(json);
            for (var open = reader.Read() && reader.TokenType == JsonTokenType.StartObject; open && reader.Read() && reader.TokenType == JsonTokenType.PropertyName; reader.Skip())
            {
                fields.Add(reader.GetString()!);
            }
        }
        catch (JsonException)
        {
            // What stands before the fault says enough.
        }

        return fields;
    }

    [GeneratedRegex("The JSON property '(?<it>[^']*)' could not be mapped", RegexOptions.ExplicitCapture)]
    private static partial Regex Unknown();
}
