using Underturf.Planning.Day;
using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>The order of the day to take along: jobs with a box to tick each, what to load, what waits, how places stand, and what may run tonight.</summary>
public static class DaySheet
{
    public const string FileName = "day.pdf";

    /// <param name="answers">What belief says, where it was worked out before.</param>
    public static Paper Make(Notebook notebook, DayAnswer day, Answers answers)
    {
        var matter = new PaperMatter(notebook, answers);
        return new Paper(FileName, $"Order of the day, {PaperMatter.Day(day.Begin.Date)}, {matter.PropertyName}", PdfPaper.Write(Sheets(matter, day), $"Order of the day, {Shorten.Name(matter.PropertyName, Styles.Body, 300, 1)}", day.Begin, day.Engine));
    }

    internal static IReadOnlyList<Sheet> Sheets(PaperMatter matter, DayAnswer day)
    {
        var form = PageForm.Desk(matter.UsesUsUnits);
        var sheets = Flow.Pages([.. Title(form, matter, day), .. new DayRowsPart(form).Blocks(day), .. DayStatePart.Blocks(form, day), .. DayNightPart.Blocks(form, day.Tonight)], form);
        PageFoot.Draw(sheets, $"Order of the day · {matter.PropertyName} · {PaperMatter.Day(day.Begin.Date)} · engine {day.Engine}, practice book {day.Book}", PaperMatter.Prevail);
        return sheets;
    }

    private static IEnumerable<Block> Title(PageForm form, PaperMatter matter, DayAnswer day) =>
    [
        .. Paragraph.Of(form, $"Order of the day · {PaperMatter.Day(day.Begin.Date)}", Styles.Over, 0, 0, true),
        .. Paragraph.Of(form, Shorten.Name(matter.PropertyName, Styles.Title, form.InnerWidthPoints, 2), Styles.Title, 2, 0, true),
        .. Paragraph.Of(form, Lead(day), Styles.Lead, 10),
        .. Paragraph.Of(form, "In this order: what saves most for its minutes, walking counted. Where something turns out otherwise, note it and have the day ordered anew. Leave every place so that its state is noted, and say who was told.", Styles.Body, 5),
    ];

    private static string Lead(DayAnswer day) => day.Rows is [.., var last]
        ? $"From {DayWords.Clock(day.Begin)} at {day.At} to about {DayWords.Clock(last.End)}{(last.SpreadMinutes > 0 ? $", give or take {DayWords.Minutes(last.SpreadMinutes)}" : string.Empty)}. {(day.Waiting.Count > 0 ? $"{day.Waiting.Count} {(day.Waiting.Count == 1 ? "job waits" : "jobs wait")} for a ticket, a word or parts." : "Nothing waits.")}"
        : "Nothing that can be begun today is worth its minutes.";
}
