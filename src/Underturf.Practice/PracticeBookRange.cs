using System.Text.Json;
using Underturf.Quantities;

namespace Underturf.Property.Practice;

/// <summary>Numbers and words of a book that nothing can be computed with or printed, wherever they stand.</summary>
internal static class PracticeBookRange
{
    private const double Most = 1e10;

    /// <summary>Of the natural logarithm: a factor of twenty thousand either way.</summary>
    private const double MostSpread = 10;

    private static readonly string[] Spreads = ["spread", "levelSpread", "differ", "batchSpread", "noted", "soundLeakSpread", "branchSpread", "gaugeSpread", "drift"];

    public static Problem? FirstProblem(ReadOnlySpan<byte> json)
    {
        var reader = new Utf8JsonReader(json);
        return JsonElement.ParseValue(ref reader) is var root ? Find(root, string.Empty, string.Empty) : null;
    }

    private static Problem? Find(JsonElement node, string path, string name) => node.ValueKind switch
    {
        JsonValueKind.Object => node.EnumerateObject().Select(p => Find(p.Value, path.Length == 0 ? p.Name : $"{path}.{p.Name}", name == "lengthSpread" ? "spread" : p.Name)).FirstOrDefault(p => p is not null),
        JsonValueKind.Array => node.EnumerateArray().Select((item, i) => Find(item, $"{path}[{i}]", name)).FirstOrDefault(p => p is not null),
        JsonValueKind.Number => Number(node.GetDouble(), path, name),
        JsonValueKind.String when node.GetString()!.Any(char.IsControl) => Wrong(path, "holds a character that cannot be printed", "Take it out"),
        _ => null,
    };

    private static Problem? Number(double value, string path, string name) =>
        Math.Abs(value) > Most ? Wrong(path, "is too large to compute with", "Check the number and its unit")
        : name.EndsWith("Awg", StringComparison.Ordinal) && value is < 0 or > 40 ? Wrong(path, "is no wire gauge", "Give an AWG number from 0 to 40")
        : Spreads.Contains(name) && value > MostSpread ? Wrong(path, "is too wide a spread", $"Give the standard deviation of a natural logarithm, at most {MostSpread}: 0.1 is about 10 %")
        : null;

    private static Problem Wrong(string path, string reason, string remedy) =>
        new($"practice book, {path}", reason, $"{remedy}; underturf book prints the default to compare with");
}
