using System.Buffers;
using System.Text.Json;

namespace Underturf.FieldLog;

/// <summary>Writes facts as bodies: one line of JSON that reads back as the same fact.</summary>
public static class BodyText
{
    /// <summary>The fields that every body may have before those of its kind.</summary>
    internal static readonly string[] Frame = ["kind", "version", "at"];

    /// <param name="at">When it was so, with the offset of the writer's clock; the time of noting where nothing is given.</param>
    public static byte[] Write(Fact fact, DateTimeOffset? at = null, KindCatalogue? kinds = null)
    {
        var codec = (kinds ?? KindCatalogue.Standard).Of(fact);
        return Json(json =>
        {
            json.WriteStartObject();
            json.WriteString("kind", codec.Kind);
            json.WriteNumber("version", codec.Version);
            if (at is { } moment)
            {
                json.WriteString("at", MomentText.Write(moment));
            }

            codec.Write(new BodyWriter(json), fact);
            json.WriteEndObject();
        });
    }

    internal static byte[] Json(Action<Utf8JsonWriter> write)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, BodyWriter.Options))
        {
            write(json);
        }

        return buffer.WrittenSpan.ToArray();
    }
}
