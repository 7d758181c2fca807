using System.Globalization;
using Underturf.Quantities;

namespace Underturf.Property;

/// <summary>Lengths, sizes and numbers in the few words that fit on a card.</summary>
internal static class BoxWords
{
    public static string? Length(Length? length, bool us) =>
        length is { } run ? string.Create(CultureInfo.InvariantCulture, $"{Units.In(run.Metres, us ? "ft" : "m"):0} {(us ? "ft" : "m")}") : null;

    public static string? Size(Length? size, bool us) =>
        size is { } across ? string.Create(CultureInfo.InvariantCulture, $"{Units.In(across.Metres, us ? "in" : "mm"):0.##} {(us ? "in" : "mm")}") : null;
}
