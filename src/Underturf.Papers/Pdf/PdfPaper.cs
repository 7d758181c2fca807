using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Underturf.Papers;

/// <summary>Writes sheets as PDF: same sheets and same moment, same bytes.</summary>
internal static class PdfPaper
{
    /// <param name="made">The moment the paper bears: the last note's, because the core has no clock.</param>
    public static byte[] Write(IReadOnlyList<Sheet> sheets, string title, DateTimeOffset made, string engine)
    {
        EmbeddedFonts.Register();
        using var document = new PdfDocument();
        document.Info.Title = ForMetadata(title);
        document.Info.Creator = $"Underturf {engine}";
        document.Info.CreationDate = made.UtcDateTime;
        document.Info.ModificationDate = made.UtcDateTime;
        document.Internals.FirstDocumentID = StableBytes.DocumentId;
        document.Internals.SecondDocumentID = StableBytes.DocumentId;
        var fonts = new Dictionary<TextStyle, XFont>();
        foreach (var sheet in sheets)
        {
            var page = document.AddPage();
            page.Width = XUnit.FromPoint(sheet.Form.WidthPoints);
            page.Height = XUnit.FromPoint(sheet.Form.HeightPoints);
            using var graphics = XGraphics.FromPdfPage(page);
            foreach (var mark in sheet.Marks)
            {
                Draw(graphics, mark, fonts);
            }
        }

        using var stream = new MemoryStream();
        document.Save(stream, false);
        return StableBytes.Of(stream.ToArray());
    }

    /// <summary>The library copies the title into XML without escaping it.</summary>
    private static string ForMetadata(string title) => title.Replace('<', '(').Replace('>', ')').Replace('&', '+');

    private static void Draw(XGraphics graphics, Mark mark, Dictionary<TextStyle, XFont> fonts)
    {
        switch (mark)
        {
            case TextMark text:
                graphics.DrawString(text.Text, Font(text.Style, fonts), new XSolidBrush(Colour(text.Style.Ink)), text.XPoints, text.BaselinePoints);
                break;
            case LineMark line:
                graphics.DrawLine(Pen(line), line.X1Points, line.Y1Points, line.X2Points, line.Y2Points);
                break;
            case BoxMark box:
                Draw(graphics, box);
                break;
            default:
                throw new InvalidOperationException($"No way to draw {mark.GetType().Name}");
        }
    }

    private static void Draw(XGraphics graphics, BoxMark box)
    {
        if (box.Fill is { } fill)
        {
            graphics.DrawRectangle(new XSolidBrush(Colour(fill)), box.XPoints, box.YPoints, box.WidthPoints, box.HeightPoints);
        }

        if (box.Edge is { } edge)
        {
            graphics.DrawRectangle(new XPen(Colour(edge), box.ThickPoints), box.XPoints, box.YPoints, box.WidthPoints, box.HeightPoints);
        }
    }

    private static XFont Font(TextStyle style, Dictionary<TextStyle, XFont> fonts)
    {
        if (!fonts.TryGetValue(style, out var font))
        {
            font = EmbeddedFonts.Font(style);
            fonts[style] = font;
        }

        return font;
    }

    private static XPen Pen(LineMark line) => new(Colour(line.Ink), line.ThickPoints)
    {
        DashStyle = line.Stroke switch { Stroke.Dashed => XDashStyle.Dash, Stroke.Dotted => XDashStyle.Dot, _ => XDashStyle.Solid },
    };

    private static XColor Colour(Ink ink)
    {
        var (red, green, blue) = Inks.Rgb(ink);
        return XColor.FromArgb(red, green, blue);
    }
}
