using Underturf.FieldLog;

namespace Underturf.Papers;

internal sealed record Column(string Title, double WidthPoints, bool Right = false);

/// <summary>What stands in one field of a table: paragraphs, and before them a grade mark or a bar.</summary>
internal sealed record Cell(params IReadOnlyList<(string Text, TextStyle Style)> Paragraphs)
{
    public Grade? Grade { get; init; }

    /// <summary>A share to draw as a bar instead of text.</summary>
    public double? BarShare { get; init; }

    /// <summary>Drawn for a hand to fill in, instead of text.</summary>
    public Blank? Blank { get; init; }

    public static Cell Of(string text, TextStyle? style = null, Grade? grade = null) => new((text, style ?? Styles.Cell)) { Grade = grade };

    public static Cell Tick() => new() { Blank = Papers.Blank.Box };

    public static Cell Write() => new() { Blank = Papers.Blank.Line };

    public static Cell Bar(double share) => new() { BarShare = share };
}

/// <summary>What a hand fills in: a box to tick, a line to write on.</summary>
internal enum Blank
{
    Box,
    Line,
}

/// <summary>Rows under a head that is drawn again on each page that they reach. A row of very many lines is cut between lines.</summary>
/// <param name="Ruled">True for a pale rule under each row.</param>
internal sealed record Table(double XPoints, IReadOnlyList<Column> Columns, bool Ruled = true)
{
    private const double Gutter = 9;

    /// <summary>Lines of a row that are never parted.</summary>
    private const int MostLines = 16;

    public double PaddingPoints { get; init; } = 3.5;

    public TextStyle HeadStyle { get; init; } = Styles.Small with { Weight = Weight.SemiBold };

    private double RightPoints => XPoints + Columns.Sum(c => c.WidthPoints);

    /// <summary>Width for the text of a column, with or without a grade mark before it.</summary>
    public double RoomPoints(int column, Grade? grade) =>
        Columns[column].WidthPoints - Gutter - (grade is null ? 0 : GradeMark.WidthPoints + GradeMark.GapPoints);

    public IEnumerable<Block> Blocks(IEnumerable<IReadOnlyList<Cell>> rows)
    {
        var head = Columns.Any(c => c.Title.Length > 0) ? Head() : null;
        if (head is not null)
        {
            yield return head with { WithNext = true, BeforePoints = 4 };
        }

        foreach (var block in rows.SelectMany(Row))
        {
            yield return block with { Head = head };
        }
    }

    private Block Head()
    {
        var titles = Columns.Select(c => TextWrap.Lines(c.Title, HeadStyle, c.WidthPoints - Gutter)).ToList();
        var height = (titles.Max(t => t.Count) * HeadStyle.LeadingPoints) + PaddingPoints;
        return new Block(height, (sheet, y) =>
        {
            var x = XPoints;
            foreach (var (column, lines) in Columns.Zip(titles))
            {
                var baseline = y + height - PaddingPoints - (HeadStyle.SizePoints * 0.25) - ((lines.Count - 1) * HeadStyle.LeadingPoints);
                foreach (var line in lines)
                {
                    Write(sheet, column, x, baseline, line, HeadStyle);
                    baseline += HeadStyle.LeadingPoints;
                }

                x += column.WidthPoints;
            }

            sheet.Line(XPoints, y + height, RightPoints, y + height, 0.9, Ink.Ink);
        });
    }

    private IEnumerable<Block> Row(IReadOnlyList<Cell> cells)
    {
        var lines = cells.Select((cell, i) => Lines(cell, Columns[i])).ToList();
        var count = Math.Max(1, lines.Max(l => l.Count));
        for (var from = 0; from < count; from += MostLines)
        {
            yield return Part(cells, lines.ConvertAll(l => l.Skip(from).Take(MostLines).ToList()), from == 0, from + MostLines >= count);
        }
    }

    private Block Part(IReadOnlyList<Cell> cells, List<List<(string Text, TextStyle Style)>> lines, bool first, bool last)
    {
        var above = first ? PaddingPoints : 0;
        var height = above + lines.Max(l => Math.Max(l.Sum(t => t.Style.LeadingPoints), 8)) + (last ? PaddingPoints : 0);
        return new Block(height, (sheet, y) =>
        {
            var x = XPoints;
            for (var i = 0; i < cells.Count; i++)
            {
                Draw(sheet, cells[i], Columns[i], lines[i], x, y + above, first);
                x += Columns[i].WidthPoints;
            }

            if (Ruled && last)
            {
                sheet.Line(XPoints, y + height, RightPoints, y + height, 0.5, Ink.Rule);
            }
        });
    }

    private static void Draw(Sheet sheet, Cell cell, Column column, List<(string Text, TextStyle Style)> lines, double x, double top, bool first)
    {
        var y = top;
        foreach (var (text, style) in lines)
        {
            Write(sheet, column, x + Indent(cell), y + style.AscentPoints, text, style);
            y += style.LeadingPoints;
        }

        if (first && cell.Grade is { } grade)
        {
            var size = lines.Count == 0 ? Styles.Cell : lines[0].Style;
            GradeMark.Draw(sheet, x, top + size.AscentPoints - (size.SizePoints * 0.33), grade);
        }

        if (first && cell.BarShare is { } share)
        {
            ShareBar.Draw(sheet, x, top + 2, column.WidthPoints - Gutter, share);
        }

        if (first && cell.Blank is { } blank)
        {
            BlankMark.Draw(sheet, x, top, column.WidthPoints - Gutter, blank);
        }
    }

    private static void Write(Sheet sheet, Column column, double x, double baseline, string text, TextStyle style)
    {
        if (column.Right)
        {
            sheet.TextRight(x + column.WidthPoints - Gutter, baseline, text, style);
        }
        else
        {
            sheet.Text(x, baseline, text, style);
        }
    }

    private static double Indent(Cell cell) => cell.Grade is null ? 0 : GradeMark.WidthPoints + GradeMark.GapPoints;

    private static List<(string Text, TextStyle Style)> Lines(Cell cell, Column column) => [.. cell.Paragraphs
        .Where(p => p.Text.Length > 0)
        .SelectMany(p => TextWrap.Lines(p.Text, p.Style, column.WidthPoints - Gutter - Indent(cell)).Select(line => (line, p.Style)))];
}
