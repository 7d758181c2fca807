namespace Underturf.Papers;

/// <summary>The findings: next move first, then each open question with its evidence, then what nobody knows yet.</summary>
internal static class FindingsPaper
{
    public static byte[] Make(PaperMatter matter)
    {
        var title = $"Findings, {Shorten.Name(matter.PropertyName, Styles.Body, 300, 1)}";
        return PdfPaper.Write(Sheets(matter), title, matter.Made, matter.Answers.Engine);
    }

    public static IReadOnlyList<Sheet> Sheets(PaperMatter matter)
    {
        var form = PageForm.Desk(matter.UsesUsUnits);
        var questions = matter.Answers.Questions;
        var sheets = Flow.Pages(
        [
            .. TitleBlock.Blocks(form, matter),
            .. SummaryPart.Blocks(form, matter),
            .. ReadingGuide.Blocks(form),
            .. questions.SelectMany((question, i) => QuestionPart.Blocks(form, matter, question, i + 1)),
            .. WaterPart.Blocks(form, matter),
            .. UnknownPart.Blocks(form, matter),
            .. SitePart.Blocks(form, matter),
        ], form);
        PageFoot.Draw(sheets, $"Findings · {matter.PropertyName} · {matter.Dates}", PaperMatter.Prevail);
        return sheets;
    }
}
