namespace Underturf.Papers;

/// <summary>Running text as one block a line, so that it may break over pages, never leaving a line alone.</summary>
internal static class Paragraph
{
    /// <summary>A paragraph of up to this many lines stays whole.</summary>
    private const int Whole = 4;

    public static IEnumerable<Block> Of(PageForm form, string text, TextStyle style, double beforePoints = 0, double indentPoints = 0, bool withNext = false)
    {
        var lines = TextWrap.Lines(text, style, form.InnerWidthPoints - indentPoints);
        for (var i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            yield return new Block(style.LeadingPoints, (sheet, y) => sheet.Text(form.LeftPoints + indentPoints, y + style.AscentPoints, line, style))
            {
                BeforePoints = i == 0 ? beforePoints : 0,
                WithNext = i == lines.Count - 1 ? withNext : lines.Count <= Whole || i == 0 || i == lines.Count - 2,
            };
        }
    }

    public static IEnumerable<Block> Heading(PageForm form, string text) => Of(form, text, Styles.Heading, 26, 0, true);

    public static IEnumerable<Block> Minor(PageForm form, string text) => Of(form, text, Styles.Minor, 13, 0, true);
}
