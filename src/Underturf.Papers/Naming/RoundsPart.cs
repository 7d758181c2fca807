using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>The rounds of a plan that is worked on paper.</summary>
internal static class RoundsPart
{
    private const double NumberPoints = 24;

    public static IEnumerable<Block> Blocks(PageForm form, NamingAnswer naming, NamingSheet sheet) =>
    [
        .. Paragraph.Of(form, $"Caution: {Sentence.Ended(sheet.Caution)}", Styles.Lead, 12),
        .. Paragraph.Heading(form, Sentence.Upper(sheet.Way)),
        .. Paragraph.Of(form, Sentence.Upper(Sentence.Ended(sheet.Say)) + Against(naming, sheet), Styles.Body, 3),
        .. Paragraph.Of(form, $"Why so: {naming.Why}.", Styles.Small, 3),
        .. sheet.Fitted.Count > 0 ? OneTrip(form, sheet) : sheet.Keys.Count > 0 ? ByHalves(form, naming, sheet) : OneByOne(form, naming, sheet),
    ];

    private static string Against(NamingAnswer naming, NamingSheet sheet) =>
        naming.Next?.AgainstName is not { } common ? string.Empty : sheet.Fitted.Count > 0 ? $" The common here is {common}." : $" The other lead goes on {common}.";

    /// <summary>A tick for each end that answers; then its row of ticks is looked for in the key.</summary>
    private static IEnumerable<Block> ByHalves(PageForm form, NamingAnswer naming, NamingSheet sheet)
    {
        var rounds = new Table(form.LeftPoints, [new("Round", NumberPoints + 16), new("Put it on", form.InnerWidthPoints - NumberPoints - 16)]);
        return
        [
            .. Paragraph.Minor(form, $"Rounds: after each, touch every {(sheet.FromPlace ? "wire at the controller" : "end")} and tick those that answer"),
            .. rounds.Blocks(sheet.Rounds.Select((round, i) => (IReadOnlyList<Cell>)[Cell.Of($"{i + 1}", Styles.StrongCell), Cell.Of(Sentence.Upper(round.On))])),
            .. TickGrid.Blocks(form, naming, sheet),
            .. PatternKey.Blocks(form, sheet),
        ];
    }

    private static IEnumerable<Block> OneByOne(PageForm form, NamingAnswer naming, NamingSheet sheet)
    {
        var (say, found) = naming.Next?.UntilOne == false ? ($"compare all {(sheet.FromPlace ? "wires at the controller" : "ends")}, then the next round", $"Loudest: which {(sheet.FromPlace ? "wire" : "end")}") : ("touch until one end answers, then the next round", "Answered: which end");
        var table = new Table(form.LeftPoints, [new("Round", NumberPoints + 16), new("Put it on", 190), new(found, form.InnerWidthPoints - NumberPoints - 256), new("None", 50)]) { PaddingPoints = 5 };
        return
        [
            .. Paragraph.Minor(form, $"Rounds: {say}"),
            .. table.Blocks(sheet.Rounds.Select((round, i) => (IReadOnlyList<Cell>)[Cell.Of($"{i + 1}", Styles.StrongCell), Cell.Of(Sentence.Upper(round.On)), Cell.Write(), Cell.Tick()])),
        ];
    }

    /// <summary>Each resistor stands beside what the meter will show through it, so that a reading is read off at once.</summary>
    private static IEnumerable<Block> OneTrip(PageForm form, NamingSheet sheet)
    {
        var fitted = new Table(form.LeftPoints, [new(sheet.FromPlace ? "Wire" : "End", 130), new("Resistor", 90), new("Reads about", form.InnerWidthPoints - 380), new("Fitted", 60), new("Taken off again", 100)]) { PaddingPoints = 5 };
        var read = new Table(form.LeftPoints, [new("Round", NumberPoints + 16), new("Meter on", 150), new("Ohms read", 120), new(sheet.FromPlace ? "So it is" : "So it is end", form.InnerWidthPoints - NumberPoints - 286)]) { PaddingPoints = 5 };
        return
        [
            .. Paragraph.Minor(form, sheet.FromPlace ? "At the controller: what goes between each lifted wire and the lifted common" : "At the box: what goes between each end and the common"),
            .. fitted.Blocks(sheet.Fitted.Zip(sheet.Keys, (fit, key) => (IReadOnlyList<Cell>)[Cell.Of(fit.Name, Styles.StrongCell), Cell.Of(fit.Sign), Cell.Of(key.Sign), Cell.Tick(), Cell.Tick()])),
            .. Paragraph.Of(form, "What it reads has the wire's own ohms in it.", Styles.Small, 3),
            .. Paragraph.Minor(form, sheet.FromPlace ? "At the box: end after end to the common, ohms or \"over range\" (then it is none of these)" : "At the controller: wire after wire to the common, ohms or \"over range\" (then it ends at none of these)"),
            .. read.Blocks(sheet.Rounds.Select((round, i) => (IReadOnlyList<Cell>)[Cell.Of($"{i + 1}", Styles.StrongCell), Cell.Of(Sentence.Upper(round.On), Styles.StrongCell), Cell.Write(), Cell.Write()])),
            .. Paragraph.Of(form, "Take every resistor off again.", Styles.Strong, 6),
        ];
    }
}
