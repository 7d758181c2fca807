using Underturf.Planning.Repair;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Telling;

namespace Underturf.Papers;

/// <summary>What wants repair with its price, and for each valve and box a step card to work by.</summary>
internal static class RepairPaper
{
    public static byte[] Make(PaperMatter matter, RepairListAnswer repairs) =>
        PdfPaper.Write(Sheets(matter, repairs), $"Repairs, {Shorten.Name(matter.PropertyName, Styles.Body, 300, 1)}", matter.Made, repairs.Engine);

    /// <summary>One card by itself.</summary>
    public static byte[] Card(PaperMatter matter, RepairAnswer plan)
    {
        var sheets = RepairCard.Sheets(matter, plan, alone: true);
        PageFoot.Draw(sheets, Foot(matter, "Step card", plan.Engine, plan.Book), PaperMatter.Prevail);
        return PdfPaper.Write(sheets, $"Step card, {Shorten.Name(plan.Name, Styles.Body, 300, 1)}", matter.Made, plan.Engine);
    }

    public static IReadOnlyList<Sheet> Sheets(PaperMatter matter, RepairListAnswer repairs)
    {
        var form = PageForm.Desk(matter.UsesUsUnits);
        IReadOnlyList<Sheet> sheets =
        [
            .. Flow.Pages([.. Title(form, matter, repairs), .. List(form, repairs), .. repairs.Items.Where(i => i.Plan is not null).SelectMany(i => Estimate(form, i.Plan!))], form),
            .. repairs.Items.Select(i => i.Plan).OfType<RepairAnswer>().SelectMany(p => RepairCard.Sheets(matter, p, alone: false)),
        ];
        PageFoot.Draw(sheets, Foot(matter, "Repairs", repairs.Engine, repairs.Book), PaperMatter.Prevail);
        return sheets;
    }

    private static string Foot(PaperMatter matter, string what, string engine, string book) => $"{what} · {matter.PropertyName} · {matter.Dates} · engine {engine}, practice book {book}";

    private static IEnumerable<Block> Title(PageForm form, PaperMatter matter, RepairListAnswer repairs) =>
    [
        .. Paragraph.Of(form, "Repairs: estimate and step cards", Styles.Over, 0, 0, true),
        .. Paragraph.Of(form, Shorten.Name(matter.PropertyName, Styles.Title, form.InnerWidthPoints, 2), Styles.Title, 2, 0, true),
        .. Paragraph.Of(form, $"{repairs.Items.Count} {(repairs.Items.Count == 1 ? "thing wants" : "things want")} repair: {repairs.Minutes:0} min, {repairs.Price:0.00} {repairs.Money}, walking not counted.", Styles.Lead, 10),
        .. Paragraph.Of(form, PriceWords.Repair, Styles.Small, 6),
        .. Paragraph.Of(form, "What saves most loss for its minutes stands first. ± is a standard deviation. What is not sure may turn out to be something else: its share is said.", Styles.Small, 6),
    ];

    private static IEnumerable<Block> List(PageForm form, RepairListAnswer repairs)
    {
        var table = new Table(form.LeftPoints, [new("Where", 96), new("What", form.InnerWidthPoints - 338), new("Sure", 76, true), new("Minutes", 90, true), new($"{repairs.Money}", 76, true)]);
        return
        [
            .. Paragraph.Heading(form, "What to do"),
            .. table.Blocks(repairs.Items.Select(i => (IReadOnlyList<Cell>)
            [
                Cell.Of(Sentence.Upper(i.Name), Styles.StrongCell),
                new Cell((Sentence.Upper(i.Say), Styles.Cell), (i.Plan is not null ? string.Empty : i.LeavesOut.Length > 0 ? Sentence.Upper(i.LeavesOut) : "minutes of the book", Styles.Small)),
                Cell.Of(Say.Share(i.Chance), null, FieldLog.Grade.Inferred),
                Cell.Of(i.Plan is null ? $"{i.Minutes:0.#}" : $"{i.Minutes:0.#} ± {i.SpreadMinutes:0.#}"),
                Cell.Of($"{i.Price:0.00}"),
            ])),
        ];
    }

    /// <summary>Hours, parts, and what may come on top.</summary>
    internal static IEnumerable<Block> Estimate(PageForm form, RepairAnswer plan)
    {
        var table = new Table(form.LeftPoints, [new("What", form.InnerWidthPoints - 236), new("Minutes", 62, true), new($"Work, {plan.Money}", 84, true), new($"Parts, {plan.Money}", 90, true)]);
        var estimate = plan.Estimate;
        return
        [
            .. Paragraph.Minor(form, Shorten.Name($"Estimate, {plan.Name}: {plan.Choice.Say}", Styles.Minor, form.InnerWidthPoints, 1)),
            .. table.Blocks(plan.Choice.Cost.Lines.Select(l => Line(Sentence.Upper(l.What), $"{l.Minutes:0.#}", l.Work, l.Parts, Styles.Cell))
                .Append(Line($"Together {plan.Choice.Cost.Price:0.00} {plan.Money}", $"{plan.Choice.Cost.Minutes:0.#}", estimate.Work, estimate.Parts, Styles.StrongCell))),
            .. Paragraph.Of(form, $"{estimate.Hours:0.00} hours, and {estimate.Contingency:0.00} {plan.Money} for what may come on top: not to exceed {estimate.Total:0.00} {plan.Money} without asking.", Styles.Strong, 5),
        ];
    }

    private static IReadOnlyList<Cell> Line(string what, string minutes, decimal work, decimal parts, TextStyle style) =>
        [Cell.Of(what, style), Cell.Of(minutes, style), Cell.Of($"{work:0.00}", style), Cell.Of($"{parts:0.00}", style)];
}
