using Underturf.FieldLog;

namespace Underturf.Papers;

/// <summary>
/// How a statement is known, drawn as a short bar: solid measured, dashed inferred (or estimated), dotted told, hollow unknown. The same on every paper.
/// </summary>
internal static class GradeMark
{
    public const double WidthPoints = 15, GapPoints = 5;

    private const double HeightPoints = 3.2;

    public static IReadOnlyList<(Grade Grade, string Word)> Legend { get; } =
        [(Grade.Measured, "measured or seen"), (Grade.Inferred, "inferred or estimated"), (Grade.Told, "told"), (Grade.Unknown, "unknown")];

    public static Stroke StrokeOf(Grade grade) => grade switch
    {
        Grade.Measured => Stroke.Solid,
        Grade.Told => Stroke.Dotted,
        _ => Stroke.Dashed,
    };

    /// <param name="middlePoints">Height of its middle.</param>
    public static void Draw(Sheet sheet, double xPoints, double middlePoints, Grade grade)
    {
        var top = middlePoints - (HeightPoints / 2);
        var (pieces, share) = grade switch
        {
            Grade.Measured => (1, 1.0),
            Grade.Told => (5, 0.5),
            Grade.Unknown => (0, 0.0),
            _ => (3, 0.72),
        };
        if (pieces == 0)
        {
            sheet.Box(xPoints, top, WidthPoints, HeightPoints, Ink.White, Ink.Ink, 0.7);
        }

        var pitch = WidthPoints / Math.Max(1, pieces - 1 + share);
        for (var i = 0; i < pieces; i++)
        {
            sheet.Box(xPoints + (i * pitch), top, pitch * share, HeightPoints, Ink.Ink);
        }
    }

    /// <summary>All marks with their words in one line.</summary>
    public static void DrawLegend(Sheet sheet, double xPoints, double baselinePoints, TextStyle style)
    {
        var x = xPoints;
        foreach (var (grade, word) in Legend)
        {
            Draw(sheet, x, baselinePoints - (style.SizePoints * 0.33), grade);
            sheet.Text(x + WidthPoints + GapPoints, baselinePoints, word, style);
            x += WidthPoints + GapPoints + Typeface.WidthPoints(word, style) + 16;
        }
    }
}
