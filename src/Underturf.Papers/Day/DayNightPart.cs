using Underturf.Planning.Day.Interim;

namespace Underturf.Papers;

/// <summary>Which stations may run tonight and which must not, with the programme for the time being: to be handed to whoever stays.</summary>
internal static class DayNightPart
{
    public static IEnumerable<Block> Blocks(PageForm form, InterimAnswer night) => night.Stations.Count == 0 ? [] :
    [
        .. Paragraph.Heading(form, "Tonight"),
        .. Paragraph.Of(form, "As things stand before the work of the day. A station runs by itself where that is expected to cost less than standing by, or than a day without water.", Styles.Body, 3),
        .. Groups(form, night),
        .. night.Overnight.SelectMany(o => Paragraph.Of(form, o, Styles.Strong, 6)),
        .. Reasons(form, night),
        .. Programme(form, night),
    ];

    private static IEnumerable<Block> Groups(PageForm form, InterimAnswer night)
    {
        var table = new Table(form.LeftPoints, [new("", 110), new("Station", form.InnerWidthPoints - 110)]);
        return table.Blocks(new[] { Tonight.MustNot, Tonight.ByHand, Tonight.StaysDry, Tonight.Run }
            .Select(what => (Name: Sentence.Upper(InterimWords.Of(what)), Numbers: night.Of(what).Select(s => s.Number).ToList()))
            .Where(g => g.Numbers.Count > 0)
            .Select(g => (IReadOnlyList<Cell>)[Cell.Of(g.Name, Styles.StrongCell), Cell.Of(Property.NumberRuns.Say(g.Numbers), Styles.StrongCell)]));
    }

    private static IEnumerable<Block> Reasons(PageForm form, InterimAnswer night)
    {
        var table = new Table(form.LeftPoints, [new("Station", 110), new("Why", form.InnerWidthPoints - 230), new("After today's order", 120)]);
        var rows = night.Stations.Where(s => s.Why.Count > 0).GroupBy(s => (s.What, s.Then, Why: InterimWords.Why(s))).ToList();
        return rows.Count == 0 ? [] :
        [
            .. Paragraph.Minor(form, "Why"),
            .. table.Blocks(rows.Select(g => (IReadOnlyList<Cell>)[Cell.Of(Property.NumberRuns.Say(g.Select(s => s.Number)), Styles.StrongCell), Cell.Of(Sentence.Ended(Sentence.Upper(g.Key.Why))), Cell.Of(g.Key.Then == g.Key.What ? "the same" : InterimWords.Of(g.Key.Then))])),
        ];
    }

    /// <summary>Two stations a line: it hangs at the controller for a night or two.</summary>
    private static IEnumerable<Block> Programme(PageForm form, InterimAnswer night)
    {
        var half = form.InnerWidthPoints / 2;
        var table = new Table(form.LeftPoints, [new("Station", 50), new("Waters", half - 104), new("Minutes", 48, true), new("", 12), new("Station", 50), new("Waters", half - 104), new("Minutes", 48, true)]);
        var runs = night.Of(Tonight.Run).ToList();
        var rows = (runs.Count + 1) / 2;
        return runs.Count == 0 ? [] : Whole(
        [
            .. Paragraph.Minor(form, $"Programme for the time being: one after the other, {night.ProgrammeMinutes:0} min"),
            .. table.Blocks(Enumerable.Range(0, rows).Select(r => (IReadOnlyList<Cell>)[.. Run(runs[r], half), Cell.Of(string.Empty), .. r + rows < runs.Count ? Run(runs[r + rows], half) : [Cell.Of(string.Empty), Cell.Of(string.Empty), Cell.Of(string.Empty)]])),
        ]);
    }

    /// <summary>On one page, as long as it fits on one.</summary>
    private static IEnumerable<Block> Whole(IReadOnlyList<Block> blocks) => blocks.Select((b, i) => b with { WithNext = i < blocks.Count - 1 });

    private static Cell[] Run(StationTonight station, double half) =>
        [Cell.Of(station.Number, Styles.StrongCell), Cell.Of(station.WatersWhat.Length > 0 ? Shorten.Name(Sentence.Upper(station.WatersWhat), Styles.Cell, half - 113, 1) : "unknown"), Cell.Of($"{station.Minutes:0.#}")];
}
