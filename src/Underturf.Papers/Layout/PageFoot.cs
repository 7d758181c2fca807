namespace Underturf.Papers;

/// <summary>The foot of every page: what paper it is, what prevails, which page of how many.</summary>
internal static class PageFoot
{
    private const double NumberRoomPoints = 90, LinePoints = 12;

    public static void Draw(IReadOnlyList<Sheet> sheets, string paper, string caution)
    {
        for (var i = 0; i < sheets.Count; i++)
        {
            var (sheet, form) = (sheets[i], sheets[i].Form);
            var top = form.BottomPoints + 18;
            sheet.Rule(top);
            sheet.Text(form.LeftPoints, top + LinePoints, Shorten.Name(caution, Styles.SmallStrong, form.InnerWidthPoints - NumberRoomPoints, 1), Styles.SmallStrong);
            sheet.Text(form.LeftPoints, top + (2 * LinePoints), Shorten.Name(paper, Styles.Small, form.InnerWidthPoints, 1), Styles.Small);
            sheet.TextRight(form.RightPoints, top + LinePoints, $"page {i + 1} of {sheets.Count}", Styles.SmallStrong);
        }
    }
}
