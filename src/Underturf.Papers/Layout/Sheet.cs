namespace Underturf.Papers;

internal enum Stroke
{
    Solid,
    Dashed,
    Dotted,
}

/// <summary>Something drawn on a sheet. Points from the upper left corner; 72 points are one inch.</summary>
internal abstract record Mark;

internal sealed record TextMark(double XPoints, double BaselinePoints, string Text, TextStyle Style) : Mark;

internal sealed record LineMark(double X1Points, double Y1Points, double X2Points, double Y2Points, double ThickPoints, Ink Ink, Stroke Stroke) : Mark;

internal sealed record BoxMark(double XPoints, double YPoints, double WidthPoints, double HeightPoints, Ink? Fill, Ink? Edge, double ThickPoints) : Mark;

/// <summary>One page as a list of marks, so that layout can be judged and tested before anything is written as PDF.</summary>
internal sealed class Sheet(PageForm form)
{
    private readonly List<Mark> marks = [];

    public PageForm Form { get; } = form;

    public IReadOnlyList<Mark> Marks => marks;

    public void Text(double xPoints, double baselinePoints, string text, TextStyle style)
    {
        if (text.Length > 0)
        {
            marks.Add(new TextMark(xPoints, baselinePoints, Typeface.Printable(text), style));
        }
    }

    public void TextRight(double rightPoints, double baselinePoints, string text, TextStyle style) =>
        Text(rightPoints - Typeface.WidthPoints(Typeface.Printable(text), style), baselinePoints, text, style);

    public void Line(double x1Points, double y1Points, double x2Points, double y2Points, double thickPoints, Ink ink, Stroke stroke = Stroke.Solid) =>
        marks.Add(new LineMark(x1Points, y1Points, x2Points, y2Points, thickPoints, ink, stroke));

    public void Rule(double yPoints) => Line(Form.LeftPoints, yPoints, Form.RightPoints, yPoints, 0.6, Ink.Rule);

    public void Box(double xPoints, double yPoints, double widthPoints, double heightPoints, Ink? fill, Ink? edge = null, double thickPoints = 0.7) =>
        marks.Add(new BoxMark(xPoints, yPoints, widthPoints, heightPoints, fill, edge, thickPoints));
}
