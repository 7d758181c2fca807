using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>A box to tick for every end without a name and every round; where there are many rounds the ends come again for the next ones.</summary>
internal static class TickGrid
{
    private const double EndPoints = 62, LooksPoints = 88, BoxPoints = 24, NamePoints = 90;

    public static IEnumerable<Block> Blocks(PageForm form, NamingAnswer naming, NamingSheet sheet)
    {
        var most = (int)((form.InnerWidthPoints - EndPoints - LooksPoints - NamePoints) / BoxPoints);
        return Enumerable.Range(0, sheet.Rounds.Count).Chunk(most).SelectMany(rounds => Part(form, naming, sheet, rounds));
    }

    private static IEnumerable<Block> Part(PageForm form, NamingAnswer naming, NamingSheet sheet, int[] rounds)
    {
        var last = rounds[^1] == sheet.Rounds.Count - 1;
        var spare = form.InnerWidthPoints - EndPoints - LooksPoints - (rounds.Length * BoxPoints);
        var table = new Table(form.LeftPoints, [new(sheet.FromPlace ? "Wire" : "End", EndPoints), new("Looks", LooksPoints), .. rounds.Select(r => new Column($"{r + 1}", BoxPoints)), new(last ? "So it is" : string.Empty, spare)]) { PaddingPoints = 5 };
        var touched = sheet.FromPlace ? naming.Next!.TouchNames.Select(name => (name, string.Empty)) : naming.Ends.Where(e => !e.Named).Select(end => (end.Name, end.Looks));
        var rows = touched.Select(one => (IReadOnlyList<Cell>)
        [
            Cell.Of(one.Item1, Styles.StrongCell), Cell.Of(one.Item2), .. rounds.Select(_ => Cell.Tick()), last ? Cell.Write() : Cell.Of(string.Empty),
        ]);
        return [.. Paragraph.Minor(form, $"Ticks, round {rounds[0] + 1} to {rounds[^1] + 1}"), .. table.Blocks(rows)];
    }
}
