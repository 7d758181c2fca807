namespace Underturf.Papers;

/// <summary>A size of paper with its margins, in points.</summary>
internal sealed record PageForm(double WidthPoints, double HeightPoints, double SidePoints, double TopPoints, double FootPoints)
{
    private const double LetterWidth = 612, LetterHeight = 792, A4Width = 595.28, A4Height = 841.89;

    public double LeftPoints => SidePoints;

    public double RightPoints => WidthPoints - SidePoints;

    public double BottomPoints => HeightPoints - FootPoints;

    public double InnerWidthPoints => RightPoints - LeftPoints;

    /// <summary>US Letter where people use US units, else A4; with margins to hold the paper by.</summary>
    public static PageForm Desk(bool us) => us ? new(LetterWidth, LetterHeight, 62, 58, 74) : new(A4Width, A4Height, 62, 62, 76);

    /// <summary>The same paper lying, with the narrow margins of a chart.</summary>
    public static PageForm Door(bool us) => us ? new(LetterHeight, LetterWidth, 36, 32, 66) : new(A4Height, A4Width, 36, 32, 66);
}
