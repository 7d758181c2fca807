using System.Text.Json;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>
/// Reads the fields of one body. A wrong or missing field is noted as a problem that names it, and reading goes on, so that a
/// writer learns of all mistakes at once; what it returns then is a stand-in that the caller throws away.
/// </summary>
public sealed partial class Fields
{
    private const int MostReported = 8;

    private readonly JsonElement body;
    private readonly string place;
    private readonly List<Problem> problems;
    private readonly List<string> asked = [];

    internal Fields(JsonElement body, string place, List<Problem> problems)
    {
        this.body = body;
        this.place = place;
        this.problems = problems;
    }

    /// <summary>Text that must be there and not be blank.</summary>
    public string Text(string name)
    {
        if (Find(name) is not { } element)
        {
            Missing(name, "text");
            return "";
        }

        var text = AsText(name, element);
        if (text is not null && string.IsNullOrWhiteSpace(text))
        {
            Wrong(name, "is empty", "Write what it is");
        }

        return text ?? "";
    }

    public string? OptionalText(string name) => Find(name) is { } element ? AsText(name, element) : null;

    /// <summary>A moment with its offset, "2031-04-04T08:00-06:00".</summary>
    public DateTimeOffset? OptionalTime(string name)
    {
        if (OptionalText(name) is not { } text)
        {
            return null;
        }

        if (!MomentText.TryParse(text, out var moment))
        {
            Wrong(name, $"is '{Short(text)}', no moment", "Write day, time and offset, for example \"2031-04-04T08:00-06:00\"");
        }

        return moment;
    }

    /// <summary>A list of texts; empty where the field is absent.</summary>
    public IReadOnlyList<string> Texts(string name)
    {
        if (Find(name) is not { } list || !IsList(name, list, "a list of texts, for example [\"s12\"]"))
        {
            return [];
        }

        return [.. list.EnumerateArray().Select(item => AsText(name, item) ?? "")];
    }

    /// <summary>A text that must be one of <paramref name="choices"/>.</summary>
    public string? OptionalChoice(string name, params ReadOnlySpan<string> choices)
    {
        var text = OptionalText(name);
        if (text is not null && !choices.Contains(text))
        {
            Wrong(name, $"is '{Short(text)}'", $"Use one of: {string.Join(", ", choices.ToArray())}");
        }

        return text;
    }

    /// <summary>As <see cref="OptionalChoice"/>, for a field that must be there.</summary>
    public string Choice(string name, params ReadOnlySpan<string> choices)
    {
        if (Find(name) is null)
        {
            Missing(name, $"one of: {string.Join(", ", choices.ToArray())}");
        }

        return OptionalChoice(name, choices) ?? "";
    }

    /// <summary>SHA-256 of a file, 64 lower-case hexadecimal digits.</summary>
    public string Hash(string name) => AsHash(name, Text(name));

    /// <summary>A list of SHA-256 hashes.</summary>
    public IReadOnlyList<string> Hashes(string name) => [.. Texts(name).Select(text => AsHash(name, text))];

    /// <summary>Notes a problem with a field that the caller found.</summary>
    public void Wrong(string name, string reason, string remedy) => problems.Add(new Problem(PlaceOf(name), reason, remedy));

    /// <summary>Fields of the body that nobody asked for: kept in the bytes, not understood. The first few stand for the rest.</summary>
    internal void ReportUnknown(string kind)
    {
        foreach (var field in body.EnumerateObject().Where(field => !asked.Contains(field.Name)).Take(MostReported))
        {
            problems.Add(new Problem(
                PlaceOf(field.Name),
                $"is not a field of '{kind}' and was not used",
                $"Its fields are: {string.Join(", ", asked)}",
                Severity.Notice));
        }
    }

    internal JsonElement? Find(string name)
    {
        if (!asked.Contains(name))
        {
            asked.Add(name);
        }

        return body.TryGetProperty(name, out var element) && element.ValueKind != JsonValueKind.Null ? element : null;
    }

    private string? AsText(string name, JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.String)
        {
            return element.GetString();
        }

        WrongType(name, element, "text in quotes");
        return null;
    }

    private string AsHash(string name, string text)
    {
        if (text.Length > 0 && !Sha256Hex.IsWellFormed(text))
        {
            Wrong(name, $"is '{Short(text)}', not a SHA-256", "Write the hash of the file as 64 lower-case hexadecimal digits");
        }

        return text;
    }

    private bool IsList(string name, JsonElement element, string form)
    {
        if (element.ValueKind != JsonValueKind.Array)
        {
            WrongType(name, element, form);
        }

        return element.ValueKind == JsonValueKind.Array;
    }

    private void Missing(string name, string form) => problems.Add(new Problem(PlaceOf(name), "is missing", $"Add \"{name}\": {form}"));

    private void WrongType(string name, JsonElement element, string form) =>
        Wrong(name, $"is {Short(element.GetRawText())}", $"Write {form}");

    private string PlaceOf(string name) => $"{place}, field '{Short(name)}'";

    private static string Short(string text) => text.Length <= 60 ? text : text[..57] + "...";
}
