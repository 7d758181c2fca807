using System.Globalization;

namespace Underturf.Property;

/// <summary>Many numbers or names in few words.</summary>
public static class NumberRuns
{
    /// <summary>A run that is shorter is written out.</summary>
    private const int LeastRun = 3;

    /// <summary>"1 to 9, 13".</summary>
    public static string Say(IEnumerable<string> labels)
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
