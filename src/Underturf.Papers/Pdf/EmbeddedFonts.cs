using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Underturf.Papers;

/// <summary>Gives the PDF library the typeface from the room's own bytes; it never looks at the machine's fonts.</summary>
internal sealed class EmbeddedFonts : IFontResolver
{
    private const string Family = "Underturf ";

    private static readonly XPdfFontOptions options = new(PdfFontEncoding.Unicode, PdfFontEmbedding.TryComputeSubset);

    private EmbeddedFonts()
    {
    }

    /// <summary>The library holds one resolver for the whole process; ours is set before the first font is asked for.</summary>
    public static void Register()
    {
        if (GlobalFontSettings.FontResolver is not EmbeddedFonts)
        {
            GlobalFontSettings.FontResolver = new EmbeddedFonts();
        }
    }

    public static XFont Font(TextStyle style) => new(Family + style.Weight, style.SizePoints, XFontStyleEx.Regular, options);

    public byte[]? GetFont(string faceName) =>
        faceName.StartsWith(Family, StringComparison.Ordinal) && Enum.TryParse<Weight>(faceName.AsSpan(Family.Length), out var weight)
            ? Typeface.File(weight).Bytes.ToArray()
            : null;

    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
        new(familyName.StartsWith(Family, StringComparison.Ordinal) ? familyName : Family + Weight.Regular);
}
