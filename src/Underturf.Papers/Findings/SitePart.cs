namespace Underturf.Papers;

/// <summary>What the next person on the site must know: how places were left, what was done, what people said.</summary>
internal static class SitePart
{
    public static IEnumerable<Block> Blocks(PageForm form, PaperMatter matter) => [.. LeftAs(form, matter), .. Done(form, matter), .. Told(form, matter)];

    private static IEnumerable<Block> LeftAs(PageForm form, PaperMatter matter)
    {
        var left = matter.Stock.LeftAs;
        if (left.Count == 0)
        {
            return [.. Paragraph.Heading(form, "What was left as what"), .. Paragraph.Of(form, "Nobody noted in which state a place was left.", Styles.Body, 3)];
        }

        var table = new Table(form.LeftPoints, [new("Place", 96), new("Left as", form.InnerWidthPoints - 322), new("Who was told", 104), new("When", 122)]);
        var rows = left.Select(l => (IReadOnlyList<Cell>)
        [
            Cell.Of(matter.View.Name(l.Fact.Place), Styles.StrongCell), Cell.Of(l.Fact.State, Styles.Cell, l.Fact.Sure), Cell.Of(l.Fact.Told ?? "nobody noted"), Cell.Of(PaperMatter.Moment(l.At)),
        ]);
        return [.. Paragraph.Heading(form, "What was left as what"), .. table.Blocks(rows)];
    }

    private static IEnumerable<Block> Done(PageForm form, PaperMatter matter)
    {
        var table = new Table(form.LeftPoints, [new("Place", 96), new("Done", form.InnerWidthPoints - 218), new("When", 122)]);
        var rows = matter.Facts.Works.Select(w => (IReadOnlyList<Cell>)
        [
            Cell.Of((w.Fact.Place ?? w.Fact.Target) is { } place ? matter.View.Name(place) : "not noted", Styles.StrongCell),
            new Cell((Sentence.Upper(w.Fact.Did), Styles.Cell), (w.Fact.Note ?? string.Empty, Styles.Small)) { Grade = w.Fact.Sure },
            Cell.Of(PaperMatter.Moment(w.At)),
        ]).ToList();
        return rows.Count == 0 ? [] : [.. Paragraph.Heading(form, "What was done"), .. table.Blocks(rows)];
    }

    private static IEnumerable<Block> Told(PageForm form, PaperMatter matter)
    {
        var table = new Table(form.LeftPoints, [new("Who", 96), new("Said", form.InnerWidthPoints - 218), new("When", 122)]);
        var rows = matter.Facts.Told.Select(t => (IReadOnlyList<Cell>)
            [Cell.Of(t.Fact.Who, Styles.StrongCell), Cell.Of(t.Fact.Text, Styles.Cell, FieldLog.Grade.Told), Cell.Of(PaperMatter.Moment(t.At))]).ToList();
        return rows.Count == 0 ? [] : [.. Paragraph.Heading(form, "What people said"), .. table.Blocks(rows)];
    }
}
