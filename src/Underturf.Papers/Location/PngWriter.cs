using System.Buffers.Binary;
using System.IO.Compression;

namespace Underturf.Papers;

/// <summary>Writes a picture of few colours as PNG (ISO/IEC 15948): eight bits a pixel, a palette with transparency, no filters.</summary>
internal static class PngWriter
{
    private static readonly byte[] Signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

    private static readonly uint[] Remainders = [.. Enumerable.Range(0, 256).Select(n => Enumerable.Range(0, 8).Aggregate((uint)n, (c, _) => (c & 1) != 0 ? 0xedb88320 ^ (c >> 1) : c >> 1))];

    /// <param name="pixels">Indices into the palette, row by row from the top.</param>
    public static byte[] Write(ReadOnlySpan<byte> pixels, int wide, IReadOnlyList<(byte Red, byte Green, byte Blue, byte Opaque)> palette)
    {
        using var file = new MemoryStream();
        file.Write(Signature);
        var head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, wide);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), pixels.Length / wide);
        (head[8], head[9]) = (8, 3);
        Chunk(file, "IHDR", head);
        Chunk(file, "PLTE", [.. palette.SelectMany(c => new[] { c.Red, c.Green, c.Blue })]);
        Chunk(file, "tRNS", [.. palette.Select(c => c.Opaque)]);
        Chunk(file, "IDAT", Packed(pixels, wide));
        Chunk(file, "IEND", []);
        return file.ToArray();
    }

    private static byte[] Packed(ReadOnlySpan<byte> pixels, int wide)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, true))
        {
            for (var row = 0; row < pixels.Length; row += wide)
            {
                zlib.WriteByte(0);
                zlib.Write(pixels.Slice(row, wide));
            }
        }

        return packed.ToArray();
    }

    private static void Chunk(MemoryStream file, string kind, ReadOnlySpan<byte> data)
    {
        Span<byte> number = stackalloc byte[4];
        byte[] named = [.. System.Text.Encoding.ASCII.GetBytes(kind), .. data];
        BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
        file.Write(number);
        file.Write(named);
        var check = uint.MaxValue;
        foreach (var one in named)
        {
            check = Remainders[(check ^ one) & 0xff] ^ (check >> 8);
        }

        BinaryPrimitives.WriteUInt32BigEndian(number, ~check);
        file.Write(number);
    }
}
