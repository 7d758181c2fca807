using System.Buffers.Binary;
using System.Text;

namespace Underturf.Papers;

/// <summary>
/// What layout needs of a TrueType file: which letters it has and how wide they are. Read from the tables head, hhea, hmtx and cmap
/// (formats 4 and 12) of the OpenType specification.
/// </summary>
internal sealed class FontFile
{
    private const int EntryBytes = 16, FirstEntry = 12;

    private readonly byte[] bytes;
    private readonly Dictionary<int, int> glyphs = [];
    private readonly int unitsPerEm, wideGlyphs, widths;

    public FontFile(byte[] bytes)
    {
        this.bytes = bytes;
        unitsPerEm = Word(Table("head") + 18);
        wideGlyphs = Word(Table("hhea") + 34);
        widths = Table("hmtx");
        ReadCmap(Table("cmap"));
    }

    public ReadOnlyMemory<byte> Bytes => bytes;

    public bool Has(Rune letter) => glyphs.ContainsKey(letter.Value);

    /// <summary>Advance of a letter as a share of the type size; 0.6 for one that the file lacks.</summary>
    public double Advance(Rune letter) => glyphs.TryGetValue(letter.Value, out var glyph)
        ? Word(widths + (4 * Math.Min(glyph, wideGlyphs - 1))) / (double)unitsPerEm
        : 0.6;

    private int Word(int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at));

    private int Long(int at) => BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(at));

    private int Table(string tag)
    {
        for (var i = 0; i < Word(4); i++)
        {
            var entry = FirstEntry + (i * EntryBytes);
            if (Encoding.ASCII.GetString(bytes, entry, 4) == tag)
            {
                return Long(entry + 8);
            }
        }

        throw new InvalidDataException($"The typeface has no table '{tag}'");
    }

    private void ReadCmap(int cmap)
    {
        for (var i = 0; i < Word(cmap + 2); i++)
        {
            var part = cmap + Long(cmap + 4 + (i * 8) + 4);
            switch (Word(part))
            {
                case 4: ReadSegments(part); break;
                case 12: ReadGroups(part); break;
                default: break;
            }
        }
    }

    private void ReadSegments(int part)
    {
        var twice = Word(part + 6);
        var (ends, starts) = (part + 14, part + 16 + twice);
        for (var s = 0; s < twice; s += 2)
        {
            var (first, last, delta, offset) = (Word(starts + s), Word(ends + s), Word(starts + twice + s), Word(starts + (2 * twice) + s));
            for (var letter = first; letter <= last && letter != 0xFFFF; letter++)
            {
                var glyph = offset == 0 ? letter : Word(starts + (2 * twice) + s + offset + (2 * (letter - first)));
                Add(letter, offset == 0 || glyph != 0 ? (glyph + delta) & 0xFFFF : 0);
            }
        }
    }

    private void ReadGroups(int part)
    {
        for (var g = 0; g < Long(part + 12); g++)
        {
            var group = part + 16 + (g * 12);
            for (var letter = Long(group); letter <= Long(group + 4); letter++)
            {
                Add(letter, Long(group + 8) + letter - Long(group));
            }
        }
    }

    private void Add(int letter, int glyph)
    {
        if (glyph != 0)
        {
            glyphs[letter] = glyph;
        }
    }
}
