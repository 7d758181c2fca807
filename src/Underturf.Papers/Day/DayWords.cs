using System.Globalization;
using Underturf.Planning.Day;

namespace Underturf.Papers;

/// <summary>Times and kinds as the day sheet says them.</summary>
internal static class DayWords
{
    public static string Clock(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);

    public static string Minutes(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{minutes:0} min");

    public static string Kind(RowKind kind) => kind switch
    {
        RowKind.FindOut => "Find out",
        RowKind.Name => "Name ends",
        RowKind.Repair => "Repair",
        RowKind.Rework => "Rework",
        RowKind.Close => "Close",
        RowKind.Recheck => "Look again",
        RowKind.Shut => "Shut water",
        _ => "Water in",
    };
}
