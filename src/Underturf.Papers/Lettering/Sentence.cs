namespace Underturf.Papers;

/// <summary>Small repairs of other people's sentences.</summary>
internal static class Sentence
{
    public static string Upper(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>With a full stop where the writer's own words do not end in one.</summary>
    public static string Ended(string text) => text.TrimEnd(')') is [.., '.' or '?' or '!'] ? text : $"{text}.";
}
