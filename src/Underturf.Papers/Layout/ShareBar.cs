namespace Underturf.Papers;

/// <summary>A probability as a bar on its track; what is under one in a hundred still shows as a sliver.</summary>
internal static class ShareBar
{
    private const double HeightPoints = 7;

    public static void Draw(Sheet sheet, double xPoints, double topPoints, double widthPoints, double share)
    {
        sheet.Box(xPoints, topPoints, widthPoints, HeightPoints, Ink.Pale, Ink.Rule, 0.4);
        sheet.Box(xPoints, topPoints, Math.Clamp(share * widthPoints, 0.8, widthPoints), HeightPoints, Ink.Accent);
    }
}
