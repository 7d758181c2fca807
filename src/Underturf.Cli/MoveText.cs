using System.Globalization;
using Underturf.Reasoning;

namespace Underturf.Cli;

/// <summary>What a move takes and saves, in the same words in every text.</summary>
internal static class MoveText
{
    /// <summary>Less than this is no way.</summary>
    private const double Shown = 0.5;

    /// <summary>"126 min, 16 min of it to walk there and 20 min to find it; saves 234 min".</summary>
    public static string Figures(Move move)
    {
        string[] way = [.. move.WalkMinutes >= Shown ? [$"{move.WalkMinutes:0} min of it to walk there"] : (string[])[], .. move.FindMinutes >= Shown ? [$"{move.FindMinutes:0} min to find it"] : (string[])[]];
        return $"{move.Minutes:0} min{(way.Length > 0 ? $", {string.Join(" and ", way)}" : string.Empty)}; saves {move.Worth:0} min";
    }

    /// <summary>What the minutes leave out, on a line of its own.</summary>
    public static IEnumerable<string> LeavesOut(Move move) => move.LeavesOut.Length > 0 ? [$"In these minutes: {move.LeavesOut}"] : [];

    public static string Minutes(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{minutes:0.#} min");
}
