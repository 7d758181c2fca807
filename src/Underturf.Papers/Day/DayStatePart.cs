using Underturf.FieldLog;
using Underturf.Planning.Day;

namespace Underturf.Papers;

/// <summary>What waits, what is for another day, how places were left, and how tickets stand.</summary>
internal static class DayStatePart
{
    public static IEnumerable<Block> Blocks(PageForm form, DayAnswer day) => [.. Waiting(form, day), .. Left(form, day), .. Tickets(form, day), .. Later(form, day), .. Evening(form, day)];

    private static IEnumerable<Block> Waiting(PageForm form, DayAnswer day)
    {
        var table = new Table(form.LeftPoints, [new("Where", 92), new("What", 170), new("Waits for", form.InnerWidthPoints - 262)]);
        return day.Waiting.Count == 0 ? [] :
        [
            .. Paragraph.Heading(form, "Waits"),
            .. table.Blocks(day.Waiting.Select(w => (IReadOnlyList<Cell>)
            [
                Cell.Of(Sentence.Upper(w.Where), Styles.StrongCell),
                Cell.Of(Sentence.Upper(w.Say) + (w.Following > 0 ? $", and {w.Following} more after it" : string.Empty)),
                new Cell([.. w.Wants.SelectMany(want => new[] { (Sentence.Upper(want.Say), Styles.StrongCell), (Sentence.Ended(Sentence.Upper(want.Remedy)), Styles.Cell) })]),
            ])),
        ];
    }

    private static IEnumerable<Block> Left(PageForm form, DayAnswer day)
    {
        var table = new Table(form.LeftPoints, [new("Where", 92), new("Left as", 150), new("Since", 92), new("Told", 84), new("Ends by", form.InnerWidthPoints - 418)]);
        return day.Left.Count == 0 ? [] :
        [
            .. Paragraph.Heading(form, "Places that stand open"),
            .. table.Blocks(day.Left.Select(l => (IReadOnlyList<Cell>)
            [
                Cell.Of(Sentence.Upper(l.Where), Styles.StrongCell),
                Cell.Of(Sentence.Upper(l.State)),
                Cell.Of($"{l.Since:yyyy-MM-dd HH:mm}"),
                Cell.Of(l.Told is { } told ? Sentence.Upper(told) : "Nobody", null, l.Told is null ? Grade.Unknown : Grade.Told),
                Cell.Of(l.Today ? "Today's order" : "Carried over", l.Today ? null : Styles.StrongCell),
            ])),
        ];
    }

    /// <summary>For each place of the day a line to write on.</summary>
    private static IEnumerable<Block> Evening(PageForm form, DayAnswer day)
    {
        var table = new Table(form.LeftPoints, [new("Where", 120), new("Left as", (form.InnerWidthPoints - 120) * 0.6), new("Who was told", (form.InnerWidthPoints - 120) * 0.4)]) { PaddingPoints = 8 };
        var places = day.Rows.Select(r => r.Where).Distinct().ToList();
        return places.Count == 0 ? [] :
        [
            .. Paragraph.Heading(form, "In the evening"),
            .. table.Blocks(places.Select(p => (IReadOnlyList<Cell>)[Cell.Of(Sentence.Upper(p), Styles.StrongCell), Cell.Write(), Cell.Write()])),
        ];
    }

    private static IEnumerable<Block> Tickets(PageForm form, DayAnswer day)
    {
        var table = new Table(form.LeftPoints, [new("Ticket", 92), new("For", 130), new("Stands", 110), new("Marks seen", (form.InnerWidthPoints - 332) / 2), new("Nothing there", (form.InnerWidthPoints - 332) / 2)]);
        return day.Tickets.Count == 0 ? [] :
        [
            .. Paragraph.Heading(form, "Locate tickets"),
            .. table.Blocks(day.Tickets.Select(t => (IReadOnlyList<Cell>)
            [
                Cell.Of(t.Number, Styles.StrongCell),
                Cell.Of(Sentence.Upper(t.Where)),
                Cell.Of(Sentence.Upper(t.Stands), t.IsValid ? null : Styles.StrongCell),
                Cell.Of(t.Marked.Count > 0 ? string.Join(", ", t.Marked) : "none noted"),
                Cell.Of(string.Join(", ", t.Clear)),
            ])),
        ];
    }

    private static IEnumerable<Block> Later(PageForm form, DayAnswer day)
    {
        var table = new Table(form.LeftPoints, [new("Where", 92), new("What", form.InnerWidthPoints - 262), new("Minutes", 50, true), new("", 16), new("Why not today", 104)]);
        return day.Later.Count == 0 ? [] :
        [
            .. Paragraph.Heading(form, "Another day"),
            .. table.Blocks(day.Later.Select(l => (IReadOnlyList<Cell>)[Cell.Of(Sentence.Upper(l.Where), Styles.StrongCell), Cell.Of(Sentence.Upper(l.Say)), Cell.Of($"{l.Minutes:0}"), Cell.Of(string.Empty), Cell.Of(Sentence.Upper(l.Why))])),
        ];
    }
}
