using System.Globalization;

namespace Underturf.Benchmarks;

/// <summary>What a study was called with.</summary>
internal static class StudyArguments
{
    /// <summary>A whole number at a place; nothing where there is none.</summary>
    public static int? Whole(this IReadOnlyList<string> arguments, int at) =>
        arguments.Count > at && int.TryParse(arguments[at], NumberStyles.None, CultureInfo.InvariantCulture, out var asked) ? asked : null;
}
