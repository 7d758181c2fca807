using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Papers;

/// <summary>The answer before the reasons: the next move, what stands open, what is in use.</summary>
internal static class SummaryPart
{
    private const double InsetPoints = 14, PadPoints = 10;

    public static IEnumerable<Block> Blocks(PageForm form, PaperMatter matter)
    {
        yield return Block.Space(16);
        foreach (var block in matter.Answers.Moves.Count > 0 ? [NextMove(form, matter.Answers.Moves[0])] : Paragraph.Of(form, "No move to propose: none is worth its minutes.", Styles.Lead))
        {
            yield return block;
        }

        foreach (var block in Paragraph.Of(form, Counts(matter), Styles.Body, 14))
        {
            yield return block;
        }

        if (matter.Answers.Questions.Count == 0)
        {
            yield break;
        }

        yield return Block.Space(8);
        var table = new Table(form.LeftPoints, [new(string.Empty, 20), new("Open question", 142), new("Most likely", form.InnerWidthPoints - 242), new("How likely", 80)]);
        foreach (var block in table.Blocks(matter.Answers.Questions.Select(Row)))
        {
            yield return block;
        }
    }

    private static IReadOnlyList<Cell> Row(OpenQuestion question, int index)
    {
        var first = question.Explanations is [var leading, ..] ? leading : null;
        return
        [
            Cell.Of($"{index + 1}", Styles.StrongCell),
            Cell.Of(Sentence.Upper(QuestionPart.Name(question).Head), Styles.StrongCell),
            Cell.Of(Sentence.Upper(first?.Summary ?? "nothing yet")),
            Cell.Of(first is null ? string.Empty : Say.Share(first.Probability)),
        ];
    }

    private static string Counts(PaperMatter matter)
    {
        var stock = matter.Stock;
        var open = matter.Answers.Questions.Count switch { 0 => "No open question", 1 => "One open question", var n => $"{n} open questions" };
        return $"{open}. {stock.InUse} of {stock.Terminals} terminals in use; {stock.ValvesFound} valves found; the valve of {stock.StationsWithoutValve.Count} stations not found yet.";
    }

    /// <summary>Set apart by a bar in the accent: it is what a reader in a hurry needs.</summary>
    private static Block NextMove(PageForm form, Move move)
    {
        var width = form.InnerWidthPoints - InsetPoints - PadPoints;
        List<(string Line, TextStyle Style)> lines =
        [
            ("Next move", Styles.Over),
            .. Lines(Sentence.Upper($"{move.Action}, at {move.Where}"), Styles.Lead, width, 5),
            .. Lines($"About {PaperMatter.Minutes(move.Minutes)}, walking included; saves about {PaperMatter.Minutes(move.Worth)} of expected work.", Styles.Body, width, 2),
            .. Lines($"Caution: {move.Caution}", Styles.Strong, width, 5),
        ];
        var height = lines.Sum(l => l.Style.LeadingPoints) + (2 * PadPoints);
        return new Block(height, (sheet, top) =>
        {
            sheet.Box(form.LeftPoints, top, form.InnerWidthPoints, height, Ink.Pale);
            sheet.Box(form.LeftPoints, top, 3.5, height, Ink.Accent);
            var y = top + PadPoints;
            foreach (var (line, style) in lines)
            {
                sheet.Text(form.LeftPoints + InsetPoints, y + style.AscentPoints, line, style);
                y += style.LeadingPoints;
            }
        });
    }

    private static IEnumerable<(string Line, TextStyle Style)> Lines(string text, TextStyle style, double width, int most) =>
        TextWrap.Lines(Shorten.Name(text, style, width, most), style, width).Select(line => (line, style));
}
