using Underturf.Papers;

namespace Underturf.Tests.Papers;

public sealed class FlowTests
{
    private static readonly PageForm form = new(200, 200, 10, 10, 40);

    [Fact]
    public void A_heading_never_stands_alone_at_the_foot_of_a_page()
    {
        var sheets = Flow.Pages([Named("filler", 130), Named("heading", 15) with { WithNext = true }, Named("first line", 15)], form);
        Assert.Equal(2, sheets.Count);
        Assert.Equal(["heading", "first line"], Texts(sheets[1]));
    }

    [Fact]
    public void A_table_says_its_head_again_on_every_page()
    {
        var table = new Table(10, [new("Place", 180)]);
        var sheets = Flow.Pages(table.Blocks(Enumerable.Range(1, 30).Select(i => (IReadOnlyList<Cell>)[Cell.Of($"box {i}")])), form);
        Assert.True(sheets.Count > 2);
        Assert.All(sheets, sheet => Assert.Equal("Place", Texts(sheet)[0]));
        Assert.Equal(30, sheets.Sum(s => Texts(s).Count - 1));
    }

    [Fact]
    public void A_row_taller_than_a_page_goes_on_over_the_next()
    {
        var table = new Table(10, [new("Words", 60)]);
        var words = string.Join(' ', Enumerable.Range(1, 200).Select(i => $"word{i}"));
        var sheets = Flow.Pages(table.Blocks([[Cell.Of(words)]]), form);
        Assert.Contains(sheets.SelectMany(Texts), t => t.Contains("word200", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_lines_at_least_stay_together_where_a_paragraph_breaks()
    {
        var text = string.Join(' ', Enumerable.Range(1, 120).Select(i => $"word{i}"));
        var sheets = Flow.Pages([Named("filler", 124), .. Paragraph.Of(form, text, Styles.Body)], form);
        Assert.All(sheets, sheet => Assert.NotEqual(1, Texts(sheet).Count(t => t != "filler")));
    }

    [Fact]
    public void A_percent_sign_stays_with_its_figure()
    {
        var words = string.Join(", ", Enumerable.Range(1, 60).Select(i => $"station {i} {i} %"));
        var lines = Flow.Pages([.. Paragraph.Of(form, words, Styles.Body)], form).SelectMany(Texts).ToList();
        Assert.True(lines.Count > 3);
        Assert.All(lines, line => Assert.False(line.StartsWith('%'), line));
    }

    private static Block Named(string name, double height) => new(height, (sheet, y) => sheet.Text(10, y + 10, name, Styles.Body));

    private static List<string> Texts(Sheet sheet) => [.. sheet.Marks.OfType<TextMark>().Select(t => t.Text)];
}
