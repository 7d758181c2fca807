using Underturf.Planning.Day;

namespace Underturf.Papers;

/// <summary>The jobs in order, and what to load for them.</summary>
internal sealed class DayRowsPart(PageForm form)
{
    private const double Time = 46, Where = 92, Done = 36;

    private double What => form.InnerWidthPoints - Time - Where - Done;

    public IEnumerable<Block> Blocks(DayAnswer day)
    {
        var table = new Table(form.LeftPoints, [new("At", Time), new("Where", Where), new("What to do", What), new("Done", Done)]) { PaddingPoints = 6 };
        return
        [
            .. day.Rows.Count > 0 ? Paragraph.Heading(form, "Today") : [],
            .. day.Rows.Count > 0 ? table.Blocks(day.Rows.Select(Row)) : [],
            .. day.Load.Count > 0 ? Load(day) : [],
        ];
    }

    private IReadOnlyList<Cell> Row(DayRow row) =>
    [
        new Cell((DayWords.Clock(row.Start), Styles.StrongCell), (DayWords.Minutes(row.Minutes), Styles.Small)),
        new Cell((Shorten.Name(Sentence.Upper(row.Where), Styles.StrongCell, 2 * Where, 2), Styles.StrongCell), (row.WalkMinutes >= 0.5 ? $"{DayWords.Minutes(row.WalkMinutes)} to get there" : string.Empty, Styles.Small)),
        new Cell(
        [
            ($"{DayWords.Kind(row.Kind)}: {Sentence.Ended(row.Say)}", Styles.StrongCell),
            .. row.Kind == RowKind.Shut && row.Stations.Count > 0 ? [($"Dry from here on: station {Property.NumberRuns.Say(row.Stations)}", Styles.Cell)] : Array.Empty<(string, TextStyle)>(),
            .. row.Steps.Count > 1 ? row.Steps.Select((s, i) => ($"{i + 1}  {Sentence.Upper(s.Say)}", Styles.Cell)) : [],
            .. row.Cautions.Select(c => ($"Caution: {Sentence.Ended(c)}", Styles.Small)),
        ]),
        Cell.Tick(),
    ];

    private IEnumerable<Block> Load(DayAnswer day)
    {
        var table = new Table(form.LeftPoints, [new("", 22), new("", (form.InnerWidthPoints / 2) - 22), new("", 22), new("", (form.InnerWidthPoints / 2) - 22)], false);
        return
        [
            .. Paragraph.Heading(form, "Take along"),
            .. table.Blocks(day.Load.Chunk(2).Select(pair => (IReadOnlyList<Cell>)[Cell.Tick(), Cell.Of(pair[0]), pair.Length > 1 ? Cell.Tick() : Cell.Of(string.Empty), Cell.Of(pair.Length > 1 ? pair[1] : string.Empty)])),
        ];
    }
}
