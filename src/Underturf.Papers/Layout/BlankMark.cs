namespace Underturf.Papers;

/// <summary>What a hand fills in, drawn: large enough for a pencil.</summary>
internal static class BlankMark
{
    public const double BoxPoints = 11;

    private const double LineDropPoints = 11;

    public static void Draw(Sheet sheet, double xPoints, double topPoints, double widthPoints, Blank blank)
    {
        if (blank == Blank.Box)
        {
            sheet.Box(xPoints, topPoints, BoxPoints, BoxPoints, null, Ink.Ink, 0.8);
        }
        else
        {
            sheet.Line(xPoints, topPoints + LineDropPoints, xPoints + widthPoints, topPoints + LineDropPoints, 0.6, Ink.Ink);
        }
    }
}
