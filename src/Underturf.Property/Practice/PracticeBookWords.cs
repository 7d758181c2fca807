using System.Text.Json;

namespace Underturf.Property.Practice;

/// <summary>What the reader of JSON complains of, in the words of the book.</summary>
internal static class PracticeBookWords
{
    private const string Missing = "was missing required properties including: ";

    public static string Of(JsonException error)
    {
        var message = error.Message.Split(" Path:")[0].TrimEnd('.');
        var at = message.IndexOf(Missing, StringComparison.Ordinal);
        return at < 0 ? message : $"lacks {message[(at + Missing.Length)..].TrimEnd('.')}";
    }
}
