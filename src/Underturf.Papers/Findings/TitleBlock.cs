namespace Underturf.Papers;

/// <summary>What the paper is, of which property, from whose notes, made with what.</summary>
internal static class TitleBlock
{
    private const int MostTitleLines = 3;

    public static IEnumerable<Block> Blocks(PageForm form, PaperMatter matter)
    {
        var name = Shorten.Name(matter.PropertyName, Styles.Title, form.InnerWidthPoints, MostTitleLines);
        var notes = matter.Notebook.Log.Standing.Count;
        var writers = Shorten.List(matter.Writers, Styles.Body, form.InnerWidthPoints - 120, 2);
        return
        [
            .. Paragraph.Of(form, "Findings", Styles.Over, 0, 0, true),
            .. Paragraph.Of(form, name, Styles.Title, 2, 0, true),
            .. Paragraph.Of(form, notes == 0
                ? "Nothing has been noted yet."
                : $"Notes of {matter.Dates}{(writers.Length > 0 ? $", by {writers}" : string.Empty)}. {notes} {(notes == 1 ? "note counts" : "notes count")}.", Styles.Body, 4),
            .. Paragraph.Of(form, $"Worked out by Underturf, engine {matter.Answers.Engine}, with practice book {matter.Answers.Book}.", Styles.Small, 1),
        ];
    }
}
