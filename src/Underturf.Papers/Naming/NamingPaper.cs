using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>The test sheet of a place: what to put where, boxes to tick, how the ticks are read off, and which wire is which as far as it is known.</summary>
internal static class NamingPaper
{
    /// <summary>Room for the name of a place in a title.</summary>
    public const double PlaceRoomPoints = 200;

    public static byte[] Make(PaperMatter matter, NamingAnswer naming) =>
        PdfPaper.Write(Sheets(matter, naming), $"Test sheet, {Name(naming)}", matter.Made, matter.Answers.Engine);

    public static IReadOnlyList<Sheet> Sheets(PaperMatter matter, NamingAnswer naming)
    {
        var form = PageForm.Desk(matter.UsesUsUnits);
        var sheets = Flow.Pages(
        [
            .. Title(form, matter, naming),
            .. naming.Sheet is { } sheet ? RoundsPart.Blocks(form, naming, sheet) : Paragraph.Of(form, Done(naming), Styles.Lead, 12),
            .. TerminalPart.Blocks(form, matter, naming),
        ], form);
        PageFoot.Draw(sheets, $"Test sheet · {Name(naming)} · {matter.PropertyName} · {matter.Dates} · engine {naming.Engine}, practice book {naming.Book}", PaperMatter.Prevail);
        return sheets;
    }

    private static string Name(NamingAnswer naming) => Shorten.Name(naming.Place, Styles.Body, PlaceRoomPoints, 1);

    private static string Done(NamingAnswer naming) => naming.Ends.All(e => e.Named) ? "Every end has its name." : "No way of naming that is owned tells more about these ends.";

    private static IEnumerable<Block> Title(PageForm form, PaperMatter matter, NamingAnswer naming) =>
    [
        .. Paragraph.Of(form, "Test sheet: which wire is it?", Styles.Over, 0, 0, true),
        .. Paragraph.Of(form, Shorten.Name(naming.Place, Styles.Title, form.InnerWidthPoints, 2), Styles.Title, 2, 0, true),
        .. Paragraph.Of(form, Shorten.Name($"{matter.PropertyName}, as the notes of {matter.Dates} have it", Styles.Body, form.InnerWidthPoints, 1), Styles.Body, 2),
        .. Paragraph.Of(form, $"{naming.Ends.Count(e => e.Named)} of {naming.Ends.Count} ends have their name.", Styles.Body, 2),
        .. naming.Doubts.SelectMany(d => Paragraph.Of(form, $"Doubtful, note {d.Entry}: {d.Why}", Styles.Strong, 6)),
        .. new Table(form.LeftPoints, [new(string.Empty, 54), new(string.Empty, form.InnerWidthPoints - 244), new(string.Empty, 40), new(string.Empty, 150)], false) { PaddingPoints = 5 }
            .Blocks([[Cell.Of("Tested by"), Cell.Write(), Cell.Of("Date"), Cell.Write()]]),
    ];
}
