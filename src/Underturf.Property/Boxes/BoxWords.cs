using System.Globalization;
using Underturf.Quantities;

namespace Underturf.Property;

/// <summary>Lengths, sizes and numbers in the few words that fit on a card.</summary>
internal static class BoxWords
{
    /// <summary>A run that is shorter is written out.</summary>
    private const int LeastRun = 3;

    public static string? Length(Length? length, bool us) =>
        length is { } run ? string.Create(CultureInfo.InvariantCulture, $"{Units.In(run.Metres, us ? "ft" : "m"):0} {(us ? "ft" : "m")}") : null;

    public static string? Size(Length? size, bool us) =>
        size is { } across ? string.Create(CultureInfo.InvariantCulture, $"{Units.In(across.Metres, us ? "in" : "mm"):0.##} {(us ? "in" : "mm")}") : null;

    /// <summary>"1 to 9, 13".</summary>
    public static string Numbers(IEnumerable<string> labels)
    {
        var all = labels.Distinct(StringComparer.Ordinal).Order(NaturalOrder.Instance).ToList();
        var said = new List<string>();
        for (var i = 0; i < all.Count;)
        {
            var last = i;
            while (last + 1 < all.Count && Follows(all[last], all[last + 1]))
            {
                last++;
            }

            said.AddRange(last - i + 1 >= LeastRun ? [$"{all[i]} to {all[last]}"] : all[i..(last + 1)]);
            i = last + 1;
        }

        return string.Join(", ", said);
    }

    private static bool Follows(string one, string next) =>
        int.TryParse(one, NumberStyles.None, CultureInfo.InvariantCulture, out var a)
        && int.TryParse(next, NumberStyles.None, CultureInfo.InvariantCulture, out var b)
        && (long)a + 1 == b;
}
