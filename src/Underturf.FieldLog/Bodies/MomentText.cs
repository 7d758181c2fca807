using System.Globalization;

namespace Underturf.FieldLog;

/// <summary>A moment with the offset that the writer's clock had: ISO 8601, seconds and their fractions optional, "Z" for UTC.</summary>
internal static class MomentText
{
    private static readonly string[] Forms =
    [
        "yyyy-MM-dd'T'HH:mmzzz", "yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFzzz",
    ];

    public static bool TryParse(string text, out DateTimeOffset moment)
    {
        var plain = text.EndsWith('Z') ? text[..^1] + "+00:00" : text;
        return DateTimeOffset.TryParseExact(plain, Forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out moment);
    }

    /// <summary>The shortest form that keeps the moment exactly.</summary>
    public static string Write(DateTimeOffset moment)
    {
        var form = moment.Ticks % TimeSpan.TicksPerMinute == 0 ? Forms[0]
            : moment.Ticks % TimeSpan.TicksPerSecond == 0 ? Forms[1]
            : Forms[2];
        return moment.ToString(form, CultureInfo.InvariantCulture);
    }
}
