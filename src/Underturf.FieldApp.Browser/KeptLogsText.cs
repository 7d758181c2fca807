using System.Buffers;
using System.Text;
using System.Text.Json;

namespace Underturf.FieldApp.Browser;

/// <summary>What a device keeps besides lines, as the script tells it and as it is told. By hand: a serializer would have to be got ready before the first note.</summary>
internal static class KeptLogsText
{
    public static KeptLogs Read(string text)
    {
        using var said = JsonDocument.Parse(text);
        var root = said.RootElement;
        return new KeptLogs(root.GetProperty("writer").GetString()!, Text(root, "open"), root.GetProperty("promised").GetBoolean(), [.. root.GetProperty("logs").EnumerateArray().Select(Log)])
        {
            Desk = Text(root, "desk"),
        };
    }

    public static string Write(KeptLog log)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteString("property", log.Property);
            json.WriteString("source", log.Source);
            json.WriteNumber("backedUp", log.BackedUp);
            json.WriteString("name", log.Name);
            json.WriteNumber("removed", log.Removed);
            json.WriteBoolean("isGone", log.IsGone);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    /// <summary>An older build left out what it did not know of.</summary>
    private static KeptLog Log(JsonElement log) => new(log.GetProperty("property").GetString()!, Text(log, "source") ?? "", log.TryGetProperty("backedUp", out var upTo) ? upTo.GetInt64() : 0)
    {
        Name = Text(log, "name"),
        Removed = log.TryGetProperty("removed", out var removed) ? removed.GetInt32() : 0,
        IsGone = log.TryGetProperty("isGone", out var gone) && gone.GetBoolean(),
    };

    private static string? Text(JsonElement of, string name) => of.TryGetProperty(name, out var text) ? text.GetString() : null;
}
