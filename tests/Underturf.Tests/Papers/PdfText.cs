using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Underturf.Tests.Papers;

/// <summary>A paper read back as a reader's program sees it.</summary>
internal static class PdfText
{
    public static PdfDocument Open(ReadOnlyMemory<byte> pdf) => PdfDocument.Open(pdf.ToArray());

    /// <summary>All words of a page with one space between, so that line breaks do not matter.</summary>
    public static string Words(Page page) => string.Join(' ', page.GetWords().Select(w => w.Text));

    public static string All(ReadOnlyMemory<byte> pdf)
    {
        using var document = Open(pdf);
        return string.Join(' ', document.GetPages().Select(Words));
    }

    /// <summary>Without any space: where a line was broken does not matter.</summary>
    public static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    /// <summary>Letters that stand outside the page.</summary>
    public static IEnumerable<string> Outside(ReadOnlyMemory<byte> pdf)
    {
        using var document = Open(pdf);
        return [.. document.GetPages().SelectMany(page => page.Letters
            .Where(l => l.BoundingBox.Left < 0 || l.BoundingBox.Bottom < 0 || l.BoundingBox.Right > page.Width || l.BoundingBox.Top > page.Height)
            .Select(l => $"page {page.Number}: {l.Value}"))];
    }
}
