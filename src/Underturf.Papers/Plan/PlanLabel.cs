using System.Text;
using System.Xml.Linq;

namespace Underturf.Papers;

/// <summary>A label of a few lines with its place beside a point.</summary>
internal sealed record PlanLabel(double X, double Y, double Radius, IReadOnlyList<(string Text, string Kind)> Lines, bool Centred = false)
{
    private const double NameSize = 13, SmallSize = 11.5, LineHeight = 14.5, PillPad = 6;
    /// <summary>How much wider the fallback faces run than ours: a reader's machine may not have ours.</summary>
    public const double StandInFaceRatio = 1.2;

    private const double LeaderFrom = 14;
    private const int LongestRunes = 32, HeadRunes = 19, TailRunes = 11;

    /// <summary>A long name without its middle: names differ at both ends.</summary>
    public static string Short(string text)
    {
        var runes = PlainText.Of(text).EnumerateRunes().ToList();
        return runes.Count <= LongestRunes ? string.Concat(runes) : $"{Join(runes.Take(HeadRunes))} … {Join(runes.TakeLast(TailRunes))}";
    }

    public XElement Draw(LabelPlacer placer)
    {
        var width = Lines.Max(l => WidthOf(l)) + 4;
        var height = Lines.Count * LineHeight;
        var box = Centred ? placer.PlaceCentred(X, Y, width, height) : placer.Place(X, Y, Radius, width, height);
        return Svg.Group("label", [.. Leader(box), .. Lines.SelectMany((line, i) => Line(line, box, i))]);
    }

    private static IEnumerable<XElement> Line((string Text, string Kind) line, LabelBox box, int index)
    {
        var top = box.Y + (index * LineHeight);
        if (line.Kind == "pill")
        {
            yield return Svg.Rect(box.X, top + 0.5, WidthOf(line), LineHeight - 1, ("rx", "3"), ("fill", Inks.Hex(Ink.Accent)));
            yield return Svg.Text(box.X + PillPad, top + 11, line.Text, "pill");
        }
        else
        {
            yield return Svg.Text(box.X + 2, top + 11, line.Text, $"{line.Kind} halo");
        }
    }

    /// <summary>A thin line from the symbol's edge where the label had to move away.</summary>
    private IEnumerable<XElement> Leader(LabelBox box)
    {
        var (nearX, nearY) = (Math.Clamp(X, box.X, box.X + box.Width), Math.Clamp(Y, box.Y, box.Y + box.Height));
        var distance = Math.Sqrt(((nearX - X) * (nearX - X)) + ((nearY - Y) * (nearY - Y)));
        if (distance > Radius + LeaderFrom)
        {
            var share = (Radius + 2) / distance;
            yield return Svg.Line(
                [(X + ((nearX - X) * share), Y + ((nearY - Y) * share)), (nearX, nearY)], false, ("stroke", Inks.Hex(Ink.Muted)), ("stroke-width", "0.7"));
        }
    }

    private static double WidthOf((string Text, string Kind) line) => StandInFaceRatio * line.Kind switch
    {
        "name" => Typeface.WidthPoints(line.Text, new TextStyle(Weight.SemiBold, NameSize, Ink.Ink)),
        "pill" => Typeface.WidthPoints(line.Text, new TextStyle(Weight.SemiBold, SmallSize, Ink.Ink)) + (2 * PillPad / StandInFaceRatio),
        _ => Typeface.WidthPoints(line.Text, new TextStyle(Weight.Regular, SmallSize, Ink.Ink)),
    };

    private static string Join(IEnumerable<Rune> runes) => string.Concat(runes).Trim();
}
