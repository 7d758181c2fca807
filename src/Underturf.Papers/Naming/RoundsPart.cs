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
        .. Paragraph.Of(form, Sentence.Upper(Sentence.Ended(sheet.Say)) + Against(naming), Styles.Body, 3),
        .. sheet.Fitted.Count > 0 ? OneTrip(form, sheet) : sheet.Keys.Count > 0 ? ByHalves(form, naming, sheet) : OneByOne(form, sheet),
    ];

    private static string Against(NamingAnswer naming) => naming.Next?.AgainstName is { } common ? $" The other lead goes on {common}." : string.Empty;

    /// <summary>A tick for each end that answers; then its row of ticks is looked for in the key.</summary>
    private static IEnumerable<Block> ByHalves(PageForm form, NamingAnswer naming, NamingSheet sheet)
    {
        var rounds = new Table(form.LeftPoints, [new("Round", NumberPoints + 16), new("Put it on", form.InnerWidthPoints - NumberPoints - 16)]);
        return
        [
            .. Paragraph.Minor(form, "Rounds: after each, touch every end and tick those that answer"),
            .. rounds.Blocks(sheet.Rounds.Select((round, i) => (IReadOnlyList<Cell>)[Cell.Of($"{i + 1}", Styles.StrongCell), Cell.Of(Sentence.Upper(round.On))])),
            .. TickGrid.Blocks(form, naming, sheet),
            .. KeyPart.Patterns(form, sheet),
        ];
    }

    private static IEnumerable<Block> OneByOne(PageForm form, NamingSheet sheet)
    {
        var table = new Table(form.LeftPoints, [new("Round", NumberPoints + 16), new("Put it on", 190), new("Answered: which end", form.InnerWidthPoints - NumberPoints - 256), new("None", 50)]) { PaddingPoints = 5 };
        return
        [
            .. Paragraph.Minor(form, "Rounds: touch until one end answers, then the next round"),
            .. table.Blocks(sheet.Rounds.Select((round, i) => (IReadOnlyList<Cell>)[Cell.Of($"{i + 1}", Styles.StrongCell), Cell.Of(Sentence.Upper(round.On)), Cell.Write(), Cell.Tick()])),
        ];
    }

    private static IEnumerable<Block> OneTrip(PageForm form, NamingSheet sheet)
    {
        var fitted = new Table(form.LeftPoints, [new("End", 150), new("Resistor", 120), new("Fitted", 60), new("Taken off again", 100)]) { PaddingPoints = 5 };
        var read = new Table(form.LeftPoints, [new("Put the meter on", 200), new("Ohms read", 140), new("So it is end", form.InnerWidthPoints - 340)]) { PaddingPoints = 5 };
        return
        [
            .. Paragraph.Minor(form, "At the box: what goes between each end and the common"),
            .. fitted.Blocks(sheet.Fitted.Select(key => (IReadOnlyList<Cell>)[Cell.Of(key.Name, Styles.StrongCell), Cell.Of(key.Sign), Cell.Tick(), Cell.Tick()])),
            .. Paragraph.Minor(form, "At the controller: wire after wire to the common, ohms or \"over range\""),
            .. read.Blocks(sheet.Rounds.Select(round => (IReadOnlyList<Cell>)[Cell.Of(Sentence.Upper(round.On), Styles.StrongCell), Cell.Write(), Cell.Write()])),
            .. KeyPart.Ohms(form, sheet),
        ];
    }
}
