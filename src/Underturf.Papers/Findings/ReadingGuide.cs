namespace Underturf.Papers;

/// <summary>How to read the paper, where the first marks stand.</summary>
internal static class ReadingGuide
{
    public static IEnumerable<Block> Blocks(PageForm form) =>
    [
        new Block(Styles.Cell.LeadingPoints, (sheet, y) => GradeMark.DrawLegend(sheet, form.LeftPoints, y + Styles.Cell.AscentPoints, Styles.Cell)) { BeforePoints = 14, WithNext = true },
        .. Paragraph.Of(
            form,
            "A likelihood is worked out from the notes and the practice book; it is not a promise. A reading speaks for an explanation where it is at least 3 times likelier under "
                + "it than under the others, strongly where it is at least 20 times, very strongly where it is at least 150 times. Minutes saved are expected minutes of work. A note is named by its writer and number. "
                + $"A letter that this typeface lacks is printed as {Typeface.StandIn}.",
            Styles.Small,
            6),
    ];
}
