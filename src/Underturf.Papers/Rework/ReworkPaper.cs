using Underturf.Planning.Rework;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Telling;

namespace Underturf.Papers;

/// <summary>The proposal: what is shared, what it takes to part it, what it costs, and the steps with a box to tick each.</summary>
internal static class ReworkPaper
{
    public static byte[] Make(PaperMatter matter, ReworkAnswer rework) =>
        PdfPaper.Write(Sheets(matter, rework), $"Stations of their own, {Shorten.Name(matter.PropertyName, Styles.Body, 300, 1)}", matter.Made, rework.Engine);

    public static IReadOnlyList<Sheet> Sheets(PaperMatter matter, ReworkAnswer rework)
    {
        var form = PageForm.Desk(matter.UsesUsUnits);
        var sheets = Flow.Pages(
        [
            .. Title(form, matter, rework),
            .. rework.Shared.SelectMany(g => Group(form, matter, rework, g)),
            .. rework.Valves.Count > 0 ? Sum(form, rework) : [],
            .. rework.Steps.Count > 0 ? Steps(form, rework) : [],
        ], form);
        PageFoot.Draw(sheets, $"Stations of their own · {matter.PropertyName} · {matter.Dates} · engine {rework.Engine}, practice book {rework.Book}", PaperMatter.Prevail);
        return sheets;
    }

    private static IEnumerable<Block> Title(PageForm form, PaperMatter matter, ReworkAnswer rework) =>
    [
        .. Paragraph.Of(form, "Proposal: a station for every valve", Styles.Over, 0, 0, true),
        .. Paragraph.Of(form, Shorten.Name(matter.PropertyName, Styles.Title, form.InnerWidthPoints, 2), Styles.Title, 2, 0, true),
        .. Paragraph.Of(form, Lead(rework), Styles.Lead, 10),
        .. rework.Missing.SelectMany(m => Paragraph.Of(form, Sentence.Ended(Sentence.Upper(m)), Styles.Strong, 5)),
        .. Cautions(rework).SelectMany(c => Paragraph.Of(form, $"Caution: {Sentence.Ended(c)}", Styles.Body, 5)),
        .. Paragraph.Of(form, "Computed from the notes. ± is a standard deviation. Once fewer valves run together, pressure and the flow of each outlet rise: measure both again.", Styles.Small, 6),
    ];

    private static string Lead(ReworkAnswer rework)
    {
        var moved = rework.Valves.Count(v => v.Terminal is not null);
        return rework.Valves.Count == 0
            ? rework.Steps.Count > 0 ? "Every valve has its station. Checks are still open." : "No valve is left that shares a conductor without anybody meaning it."
            : $"{moved} of {rework.Valves.Count} valves that share a conductor {(moved == 1 ? "gets a station of its own" : "get stations of their own")}: {rework.Cost.Minutes:0.#} min, {rework.Cost.Price:0.00} {rework.Money}; {rework.Expected:0.00} {rework.Money} with what may be tried in vain. {PriceWords.Rework}";
    }

    private static IEnumerable<string> Cautions(ReworkAnswer rework) => rework.Steps.Select(s => s.Caution).Where(c => c.Length > 0).Distinct();

    private static IEnumerable<Block> Group(PageForm form, PaperMatter matter, ReworkAnswer rework, SharedGroup group)
    {
        var table = new Table(form.LeftPoints, [new("", 46), new("Ohms", 78), new("Amperes", 92), new("At the coil", 78), new("At the worst", 84), new("Pulls in", form.InnerWidthPoints - 378)]);
        var known = group.Grade == FieldLog.Grade.Inferred ? $", {Say.Share(group.Probability)} sure" : string.Empty;
        return
        [
            .. Paragraph.Heading(form, Shorten.Name($"Station {group.Number}: {group.Count} valves on one conductor{known}", Styles.Heading, form.InnerWidthPoints, 1)),
            .. table.Blocks(new[] { ("Before", group.Before), ("After", group.After) }.Select(r => Row(r.Item1, r.Item2, group.Grade))),
            .. group is { WaterBefore: { } before, WaterAfter: { } after } ? Paragraph.Of(form, $"Water: {ReworkWords.Water(before, matter.UsesUsUnits)} together; {ReworkWords.Water(after, matter.UsesUsUnits)} each alone, {ReworkWords.WaterFrom(before)}.", Styles.Body, 4) : [],
            .. group.Minutes is { } minutes ? Paragraph.Of(form, $"Run time as found {minutes:0.#} min. Each valve keeps it, one after the other: {minutes * group.Count:0.#} min in all.", Styles.Body, 4) : [],
            .. rework.Valves.Where(v => v.Station == group.Station).SelectMany(v => Valve(form, matter, rework, v)),
        ];
    }

    private static IReadOnlyList<Cell> Row(string name, Foreseen? seen, FieldLog.Grade grade) => seen is null
        ? [Cell.Of(name, Styles.StrongCell), Cell.Of("unknown", null, FieldLog.Grade.Unknown), Cell.Of(""), Cell.Of(""), Cell.Of(""), Cell.Of("")]
        :
        [
            Cell.Of(name, Styles.StrongCell),
            Cell.Of(Say.Amount(seen.Ohms, seen.OhmsSpread, Dimension.Resistance)),
            Cell.Of(ReworkWords.Amperes(seen)),
            Cell.Of(Say.Amount(seen.Volts, seen.VoltsSpread, Dimension.Voltage)),
            Cell.Of(Say.Amount(seen.WorstVolts, seen.WorstVoltsSpread, Dimension.Voltage)),
            Cell.Of(Say.Share(seen.Opens), null, grade),
        ];

    private static IEnumerable<Block> Valve(PageForm form, PaperMatter matter, ReworkAnswer rework, ValveRework valve)
    {
        var table = new Table(form.LeftPoints, [new("", 20), new("What can be done", form.InnerWidthPoints - 250), new("Minutes", 50, true), new($"{rework.Money}", 56, true), new("Expected", 60, true), new("Goes well", 64, true)]);
        var outcome = valve.Terminal is { } terminal ? $"gets terminal {terminal}" : "stays, on purpose";
        return
        [
            .. Paragraph.Minor(form, Shorten.Name($"{Sentence.Upper(valve.Name)}, parting at {valve.JointName} ({Say.Share(valve.JointProbability)}): {outcome}", Styles.Minor, form.InnerWidthPoints, 1)),
            .. table.Blocks(valve.Alternatives.Select((a, i) => (IReadOnlyList<Cell>)
            [
                Cell.Of(i == valve.Chosen ? ">" : string.Empty, Styles.StrongCell),
                new Cell([(Sentence.Upper(a.Say), i == valve.Chosen ? Styles.StrongCell : Styles.Cell), .. Line(a.Why, Styles.Small)]),
                Cell.Of($"{a.Cost.Minutes:0.#}"),
                Cell.Of($"{a.Cost.Price:0.00}"),
                Cell.Of(a.IsPossible ? $"{a.Expected:0.00}" : "no"),
                Cell.Of(Say.Share(a.Chance)),
            ])),
        ];
    }

    private static IEnumerable<(string, TextStyle)> Line(string? text, TextStyle style) => text is null ? [] : [(Sentence.Upper(text), style)];

    private static IEnumerable<Block> Sum(PageForm form, ReworkAnswer rework)
    {
        var table = new Table(form.LeftPoints, [new("What", form.InnerWidthPoints - 230), new("Minutes", 56, true), new($"Work, {rework.Money}", 84, true), new($"Parts, {rework.Money}", 90, true)]);
        return
        [
            .. Paragraph.Heading(form, "What it comes to"),
            .. table.Blocks(rework.Cost.Lines.Select(l => Line(Sentence.Upper(l.What), l.Minutes, l.Work, l.Parts, Styles.Cell)).Append(Line($"Together {rework.Cost.Price:0.00} {rework.Money}", rework.Cost.Minutes, rework.Cost.Work, rework.Cost.Parts, Styles.StrongCell))),
            .. Paragraph.Of(form, rework.IsBest ? $"No other choice is expected to cost less than {rework.Expected:0.00} {rework.Money}." : $"No choice is expected to cost less than {rework.Bound:0.00} {rework.Money}.", Styles.Small, 4),
        ];
    }

    private static IReadOnlyList<Cell> Line(string what, decimal minutes, decimal work, decimal parts, TextStyle style) =>
        [Cell.Of(what, style), Cell.Of($"{minutes:0.#}", style), Cell.Of($"{work:0.00}", style), Cell.Of($"{parts:0.00}", style)];

    private static IEnumerable<Block> Steps(PageForm form, ReworkAnswer rework)
    {
        var table = new Table(form.LeftPoints, [new("", 22), new("Where", 84), new("What to do, and what must be seen", form.InnerWidthPoints - 196), new("Done", 40), new("Not so", 50)]) { PaddingPoints = 5 };
        return
        [
            .. Paragraph.Heading(form, "Step by step"),
            .. Paragraph.Of(form, "In this order. Where something is not as said: stop, note it, and have the plan made anew.", Styles.Body, 3),
            .. table.Blocks(rework.Steps.Select((s, i) => (IReadOnlyList<Cell>)
            [
                Cell.Of($"{i + 1}", Styles.StrongCell),
                Cell.Of(Sentence.Upper(s.Where)),
                new Cell([(Sentence.Upper(s.Say), Styles.StrongCell), .. Line(s.Expect, Styles.Cell), .. Line(s.Caution.Length > 0 ? $"Caution: {s.Caution}" : null, Styles.Small)]),
                Cell.Tick(),
                s.IsCheck ? Cell.Tick() : Cell.Of(string.Empty),
            ])),
        ];
    }
}
