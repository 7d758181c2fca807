namespace Underturf.Property;

/// <summary>The form of an IANA time zone name: "America/Denver", "Etc/UTC", "America/Argentina/Salta", "UTC".</summary>
internal static class ZoneName
{
    private const int MostParts = 3, LongestPart = 14;

    /// <summary>The few that have no area.</summary>
    private static readonly string[] alone = ["UTC", "GMT"];

    public static bool IsWellFormed(string name) =>
        alone.Contains(name) || (name.Split('/') is { Length: > 1 and <= MostParts } parts && parts.All(IsPart));

    /// <summary>The rules of the database's own theory file (from memory): ASCII letters, digits, "-", "+", "_", a capital first, at most 14 long.</summary>
    private static bool IsPart(string part) =>
        part.Length is > 0 and <= LongestPart && char.IsAsciiLetterUpper(part[0]) && part.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-' or '+');
}
