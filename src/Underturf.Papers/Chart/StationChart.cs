namespace Underturf.Papers;

/// <summary>The chart for the inside of the controller's door: one row a station, each controller from a new page.</summary>
internal static class StationChart
{
    /// <summary>Shares of the width: station, waters, valve, minutes, ohms, state.</summary>
    private static readonly (string Title, double Share, bool Right)[] columns =
        [("Station", 0.08, false), ("Waters", 0.235, false), ("Valve in", 0.165, false), ("Minutes", 0.075, true), ("Last ohms", 0.15, false), ("State", 0.295, false)];

    public static byte[] Make(PaperMatter matter)
    {
        var title = $"Station chart, {Shorten.Name(matter.PropertyName, Styles.Body, 300, 1)}";
        return PdfPaper.Write(Sheets(matter), title, matter.Made, matter.Answers.Engine);
    }

    public static IReadOnlyList<Sheet> Sheets(PaperMatter matter)
    {
        var form = PageForm.Door(matter.UsesUsUnits);
        var rows = ChartRow.Of(matter).ToLookup(r => r.Controller);
        var controllers = matter.View.Controllers.Keys.Union(rows.Select(g => g.Key)).Order(StringComparer.Ordinal).DefaultIfEmpty(string.Empty);
        var sheets = controllers.SelectMany(c => ControllerSheets(form, matter, c, [.. rows[c]])).ToList();
        PageFoot.Draw(sheets, $"Station chart · {matter.PropertyName} · {matter.Dates} · engine {matter.Answers.Engine}, practice book {matter.Answers.Book}",
            $"The supply side of the controller holds mains. Power off before a conductor is touched. {PaperMatter.Prevail}");
        foreach (var sheet in sheets)
        {
            GradeMark.DrawLegend(sheet, form.LeftPoints, form.BottomPoints + 10, Styles.Small);
        }

        return sheets;
    }

    private static IReadOnlyList<Sheet> ControllerSheets(PageForm form, PaperMatter matter, string controller, IReadOnlyList<ChartRow> rows) =>
        ChartSize.Fit(rows.Count, size => Flow.Pages([.. Title(form, matter, controller), .. Rows(form, rows, size), .. Rest(form, matter, controller, rows, size)], form));

    private static IEnumerable<Block> Title(PageForm form, PaperMatter matter, string controller)
    {
        var style = Styles.Title with { SizePoints = 20 };
        var where = controller.Length == 0 ? "no controller noted" : matter.View.Name(controller);
        return
        [
            .. Paragraph.Of(form, Shorten.Name(matter.PropertyName, style, form.InnerWidthPoints, 1), style, 0, 0, true),
            .. Paragraph.Of(form, Shorten.Name($"Station chart of {where}, as the notes of {matter.Dates} have it", Styles.Body, form.InnerWidthPoints, 1), Styles.Body, 0, 0, true),
            Block.Space(4) with { WithNext = true },
        ];
    }

    private static IEnumerable<Block> Rows(PageForm form, IReadOnlyList<ChartRow> rows, ChartSize size)
    {
        var table = new Table(form.LeftPoints, [.. columns.Select(c => new Column(c.Title, c.Share * form.InnerWidthPoints, c.Right))]) { HeadStyle = size.Head, PaddingPoints = 2.2 };
        return rows.Count == 0 ? Paragraph.Of(form, "No station noted.", size.Cell, 10) : table.Blocks(rows.Select(r => Row(table, r, size)));
    }

    private static IReadOnlyList<Cell> Row(Table table, ChartRow row, ChartSize size)
    {
        Cell Short(int column, IReadOnlyList<string> items, TextStyle style, FieldLog.Grade? grade) =>
            Cell.Of(Shorten.List(items, style, table.RoomPoints(column, grade), size.MostLines), style, grade);

        var terminal = row.Number == row.Terminal.ToString() ? string.Empty : $"terminal {row.Terminal}";
        return
        [
            new Cell((Shorten.Name(size.MostLines == 1 && terminal.Length > 0 ? $"{row.Number} / {row.Terminal}" : row.Number, size.Number, table.RoomPoints(0, null), size.MostLines), size.Number), (size.MostLines > 1 ? terminal : string.Empty, Styles.Small)),
            Short(1, row.Waters.Count == 0 ? ["not known"] : row.Waters, row.Waters.Count == 0 ? size.Quiet : size.Cell, row.WatersGrade),
            Short(2, row.Places.Count == 0 ? ["not found"] : row.Places, row.Places.Count == 0 ? size.Quiet : size.Cell, row.PlaceGrade),
            Short(3, [row.Minutes], size.Cell, null),
            Short(4, [row.Ohms], row.OhmsGrade is null ? size.Quiet : size.Cell, row.OhmsGrade),
            Short(5, [row.State], row.IsOpen ? size.Strong : size.Quiet, null),
        ];
    }

    private static IEnumerable<Block> Rest(PageForm form, PaperMatter matter, string controller, IReadOnlyList<ChartRow> rows, ChartSize size)
    {
        if (!matter.View.Controllers.TryGetValue(controller, out var known))
        {
            return [];
        }

        var used = rows.Select(r => r.Terminal).ToHashSet();
        var free = NumberRuns.Of(Enumerable.Range(1, Math.Clamp(known.Terminals, 0, 1000)).Where(t => !used.Contains(t)).Select(t => t.ToString()));
        return free.Count == 0 ? [] : Paragraph.Of(form, Shorten.List([$"Terminals without a station: {free[0]}", .. free.Skip(1)], size.Cell, form.InnerWidthPoints, 3), size.Quiet, 6);
    }
}
