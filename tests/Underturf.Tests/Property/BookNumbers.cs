using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Tests.Property;

/// <summary>The numbers and switches of the practice book, by path, to be changed one at a time.</summary>
internal static class BookNumbers
{
    public static JsonNode Base() => JsonNode.Parse(PracticeBook.DefaultBytes())!;

    /// <summary>Paths of the numbers and switches of a node.</summary>
    public static IEnumerable<string> Leaves(JsonNode node) => node switch
    {
        JsonObject o => o.Where(p => p.Value is not null).SelectMany(p => Leaves(p.Value!)),
        JsonArray a => a.OfType<JsonNode>().SelectMany(Leaves),
        JsonValue v when v.GetValueKind() is not JsonValueKind.String => [v.GetPath()],
        _ => [],
    };

    public static JsonValue Leaf(JsonNode root, string path)
    {
        var at = root;
        foreach (var step in path.TrimStart('$').Split(['.', '[', ']', '\''], StringSplitOptions.RemoveEmptyEntries))
        {
            at = at is JsonArray list ? list[int.Parse(step, CultureInfo.InvariantCulture)]! : at[step]!;
        }

        return at.AsValue();
    }

    public static Outcome<PracticeBook> Read(JsonNode root) => PracticeBook.Read(Encoding.UTF8.GetBytes(root.ToJsonString()));

    /// <summary>The default book with one leaf put otherwise; nothing where that is no valid book.</summary>
    public static PracticeBook? Changed(string path, Func<JsonValue, JsonNode> otherwise)
    {
        var root = Base();
        var leaf = Leaf(root, path);
        leaf.ReplaceWith(otherwise(leaf));
        return Read(root) is { Succeeded: true, Value: var book } ? book : null;
    }
}
