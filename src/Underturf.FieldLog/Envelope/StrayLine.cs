using System.Text.Json;
using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Says what a line is that is sound JSON but not a sealed entry.</summary>
internal static class StrayLine
{
    public static Problem Explain(ReadOnlyMemory<byte> line, string place)
    {
        using var document = JsonDocument.Parse(line);
        var root = document.RootElement;
        var isObject = root.ValueKind == JsonValueKind.Object;
        if (isObject && root.TryGetProperty("kind", out _))
        {
            return new Problem(place, "is a bare note without head and digest", "Give it to `underturf note`, which seals it");
        }

        if (isObject && root.TryGetProperty("head", out _) && !root.TryGetProperty("digest", out _))
        {
            return new Problem(place, "has no digest: it was never sealed", "Give its body to `underturf note`, which seals it");
        }

        return new Problem(
            place,
            "is not in the form of an entry",
            "Write {\"head\":…,\"body\":…,\"digest\":…} in this order, without blanks between the three and with nothing after, as docs/field-log.md says");
    }
}
