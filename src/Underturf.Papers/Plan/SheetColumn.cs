using System.Xml.Linq;

namespace Underturf.Papers;

/// <summary>The column of signs and words beside a map, filled downwards.</summary>
internal sealed class SheetColumn
{
    public const double Left = 1116;

    private const double Width = 284, Row = 24, TextRow = 16;

    private static readonly TextStyle measure = new(Weight.Regular, 13, Ink.Ink);

    private readonly List<XElement> drawn = [];

    /// <summary>Where the next line stands, and in the end where the column is done.</summary>
    public double Y { get; private set; } = PlanFrame.MapTop + 16;

    public XElement Draw(string kind) => Svg.Group(kind, drawn);

    public void Head(string text)
    {
        Y += 8;
        drawn.Add(Svg.Text(Left, Y, text, "head"));
        Y += Row;
    }

    public void Sign(XElement sign, string word) => Sign([sign], word, "body");

    public void Sign(IEnumerable<XElement> sign, string word, string kind)
    {
        drawn.AddRange(sign);
        drawn.Add(Svg.Text(Left + 40, Y + 4.5, word, kind));
        Y += Row;
    }

    public void Paragraph(string text, int mostLines)
    {
        var room = Width / PlanLabel.StandInFaceRatio;
        foreach (var line in TextWrap.Lines(Shorten.Name(text, measure, room, mostLines), measure, room))
        {
            drawn.Add(Svg.Text(Left, Y, line, "body"));
            Y += TextRow;
        }

        Y += 6;
    }
}
