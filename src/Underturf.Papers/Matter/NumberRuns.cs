using System.Globalization;
using Underturf.Property;

namespace Underturf.Papers;

/// <summary>Many numbers said shortly: "1 to 9, 13, 15".</summary>
internal static class NumberRuns
{
    /// <summary>A run of fewer is written out.</summary>
    private const int Least = 3;

    public static IReadOnlyList<string> Of(IEnumerable<string> labels)
    {
        var all = labels.Distinct(StringComparer.Ordinal).ToList();
        var numbers = all.Select(Number).OfType<int>().Order().ToList();
        var said = new List<string>();
        for (var i = 0; i < numbers.Count;)
        {
            var last = i;
            while (last + 1 < numbers.Count && numbers[last + 1] == numbers[last] + 1)
            {
                last++;
            }

            said.AddRange(last - i + 1 >= Least ? [$"{numbers[i]} to {numbers[last]}"] : numbers[i..(last + 1)].Select(n => n.ToString(CultureInfo.InvariantCulture)));
            i = last + 1;
        }

        return [.. said, .. all.Where(l => Number(l) is null).Select(PlainText.Of).Order(NaturalOrder.Instance)];
    }

    /// <summary>Only a number that reads back as written; "007" stays a name.</summary>
    private static int? Number(string label) =>
        int.TryParse(label, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number < int.MaxValue && number.ToString(CultureInfo.InvariantCulture) == label ? number : null;
}
