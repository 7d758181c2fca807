using System.Buffers.Binary;
using System.Text;

namespace Underturf.FieldLog;

/// <summary>What the first bytes of a picture say of it; the pixels are those of the file, before any turning that it asks for.</summary>
/// <param name="Media">One of <see cref="PhotoFile.MediaTypes"/>.</param>
/// <param name="Width">Where the head says it; read from JPEG and PNG.</param>
public sealed record PictureHead(string Media, int? Width, int? Height)
{
    /// <summary>How many bytes are enough: a JPEG's size stands behind what the camera says of itself.</summary>
    public const int Enough = 1 << 19;

    private const byte Marker = 0xFF;

    /// <summary>Nothing where the bytes are no picture of a form that is known.</summary>
    public static PictureHead? Read(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [Marker, 0xD8, Marker, ..] => Jpeg(bytes),
        [0x89, (byte)'P', (byte)'N', (byte)'G', ..] when bytes.Length >= 24 => new("image/png", Whole(bytes[16..]), Whole(bytes[20..])),
        [(byte)'G', (byte)'I', (byte)'F', (byte)'8', ..] => new("image/gif", null, null),
        [(byte)'I', (byte)'I', 42, 0, ..] or [(byte)'M', (byte)'M', 0, 42, ..] => new("image/tiff", null, null),
        _ when Says(bytes, 0, "RIFF") && Says(bytes, 8, "WEBP") => new("image/webp", null, null),
        _ when Says(bytes, 4, "ftyp") => Boxed(bytes),
        _ => null,
    };

    /// <summary>Goes from segment to segment until one says how large the picture is (ITU-T T.81, B.2.2).</summary>
    private static PictureHead Jpeg(ReadOnlySpan<byte> bytes)
    {
        for (var at = 2; at + 9 <= bytes.Length && bytes[at] == Marker;)
        {
            // SOF0 to SOF15 but for the tables DHT (C4), JPG (C8) and DAC (CC).
            if (bytes[at + 1] is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC))
            {
                return new("image/jpeg", Short(bytes[(at + 7)..]), Short(bytes[(at + 5)..]));
            }

            at += 2 + Short(bytes[(at + 2)..]);
        }

        return new("image/jpeg", null, null);
    }

    /// <summary>A picture in ISO base media boxes (ISO/IEC 14496-12): its brand says which.</summary>
    private static PictureHead? Boxed(ReadOnlySpan<byte> bytes) =>
        Says(bytes, 8, "avif") || Says(bytes, 8, "avis") ? new("image/avif", null, null)
        : Says(bytes, 8, "hei") || Says(bytes, 8, "hev") || Says(bytes, 8, "mif1") || Says(bytes, 8, "msf1") ? new("image/heic", null, null)
        : null;

    private static bool Says(ReadOnlySpan<byte> bytes, int at, string word) =>
        bytes.Length >= at + word.Length && Encoding.ASCII.GetString(bytes.Slice(at, word.Length)) == word;

    private static int? Whole(ReadOnlySpan<byte> bytes) => BinaryPrimitives.ReadInt32BigEndian(bytes) is > 0 and var number ? number : null;

    private static int Short(ReadOnlySpan<byte> bytes) => BinaryPrimitives.ReadUInt16BigEndian(bytes);
}
