using Underturf.FieldLog;
using Underturf.Planning.Rework;

namespace Underturf.Papers;

/// <summary>Every terminal as it will be, and what became of old numbers: to be kept at the controller.</summary>
internal static class NumbersPaper
{
    public static byte[] Make(PaperMatter matter, ReworkAnswer rework) =>
        PdfPaper.Write(Sheets(matter, rework), $"Terminals and numbers, {Shorten.Name(matter.PropertyName, Styles.Body, 300, 1)}", matter.Made, rework.Engine);

    public static IReadOnlyList<Sheet> Sheets(PaperMatter matter, ReworkAnswer rework)
    {
        var form = PageForm.Desk(matter.UsesUsUnits);
        var sheets = Flow.Pages([.. Title(form, matter), .. Numbers(form, rework), .. Terminals(form, matter, rework)], form);
        PageFoot.Draw(sheets, $"Terminals and numbers · {matter.PropertyName} · {matter.Dates} · engine {rework.Engine}, practice book {rework.Book}", PaperMatter.Prevail);
        return sheets;
    }

    private static IEnumerable<Block> Title(PageForm form, PaperMatter matter) =>
    [
        .. Paragraph.Of(form, "Terminals and numbers", Styles.Over, 0, 0, true),
        .. Paragraph.Of(form, Shorten.Name(matter.PropertyName, Styles.Title, form.InnerWidthPoints, 2), Styles.Title, 2, 0, true),
        .. Paragraph.Of(form, "Keep this with the chart at the controller: it says what an old number means.", Styles.Lead, 10),
    ];

    private static IEnumerable<Block> Numbers(PageForm form, ReworkAnswer rework)
    {
        var table = new Table(form.LeftPoints, [new("Old", 60), new("New", 60), new("What it waters", form.InnerWidthPoints - 240), new("Since", 120)]);
        return
        [
            .. Paragraph.Heading(form, "Old numbers and new ones"),
            .. rework.Numbers.Count == 0
                ? Paragraph.Of(form, "No number has changed.", Styles.Body, 4)
                : table.Blocks(rework.Numbers.Select(n => (IReadOnlyList<Cell>)
                    [Cell.Of(n.Was, Styles.StrongCell), Cell.Of(n.Now, Styles.StrongCell), Cell.Of(n.Waters is { } w ? Sentence.Upper(w) : "unknown"), Cell.Of(n.On is { } on ? PaperMatter.Day(on.Date) : "to be done", null, n.On is null ? Grade.Inferred : Grade.Measured)])),
        ];
    }

    private static IEnumerable<Block> Terminals(PageForm form, PaperMatter matter, ReworkAnswer rework)
    {
        var many = matter.View.Controllers.Count > 1;
        var table = new Table(form.LeftPoints, [new("Terminal", 60), new("Station", 70), new("Waters", form.InnerWidthPoints - 290), new("Minutes", 60, true), new("", 16), new("Was", 84)]);
        foreach (var rows in rework.Rows.GroupBy(r => r.Controller))
        {
            var blocks = Paragraph.Heading(form, many ? Shorten.Name($"Terminals of {rows.Key}", Styles.Heading, form.InnerWidthPoints, 1) : "Terminals").Concat(table.Blocks(rows.Select(r => (IReadOnlyList<Cell>)
            [
                Cell.Of($"{r.Terminal}", Styles.StrongCell),
                Cell.Of(r.Number, Styles.StrongCell),
                Cell.Of(r.Waters.Length > 0 ? Sentence.Upper(r.Waters) : "unknown", r.IsNew ? Styles.StrongCell : null, r.IsNew ? Grade.Inferred : null),
                Cell.Of(r.Minutes is { } minutes ? $"{minutes:0.#}" : string.Empty),
                Cell.Of(string.Empty),
                Cell.Of(r.Was is { } was ? $"part of {was}" : string.Empty),
            ])));
            foreach (var block in blocks)
            {
                yield return block;
            }
        }
    }
}
