using System.Xml.Linq;

namespace Underturf.Papers;

/// <summary>A sheet with a map and a column beside it: title, what it was drawn from, and the face of its words.</summary>
internal static class MapSheet
{
    private const double Margin = 40;

    private const string Style = Svg.Lettering + "\n" + """
        .title { font-size: 30px; font-weight: 700; } .under { font-size: 14px; fill: #555d58; } .head { font-size: 14px; font-weight: 700; }
        .body { font-size: 13px; } .name { font-size: 13px; font-weight: 600; } .small { font-size: 11.5px; } .ground { font-size: 11.5px; fill: #555d58; }
        .pill { font-size: 11.5px; font-weight: 600; fill: #ffffff; } .halo { paint-order: stroke; stroke: #ffffff; stroke-width: 3px; stroke-linejoin: round; }
        .none { font-size: 18px; }
        """;

    private static readonly TextStyle large = new(Weight.Bold, 30, Ink.Ink);

    /// <param name="name">What the file is called where its title is shown.</param>
    /// <param name="title">The large line.</param>
    /// <param name="kind">What kind of sheet it is, or of what property.</param>
    /// <param name="bottomUnits">Where map and column are done.</param>
    public static XDocument Of(PaperMatter matter, string name, string title, string kind, double bottomUnits, params IEnumerable<XElement?> content)
    {
        var height = bottomUnits + Margin;
        return new XDocument(new XElement(
            Svg.Space + "svg",
            new XAttribute("viewBox", $"0 0 {Svg.N(PlanFrame.SheetWidth)} {Svg.N(height)}"),
            new XAttribute("role", "img"),
            new XElement(Svg.Space + "title", $"{name}, {matter.PropertyName}"),
            new XElement(Svg.Space + "desc", $"Drawn from the notes of {matter.Dates} by Underturf, engine {matter.Answers.Engine}, practice book {matter.Answers.Book}"),
            new XElement(Svg.Space + "style", Style),
            GroundDrawing.Defs(),
            Svg.Rect(0, 0, PlanFrame.SheetWidth, height, ("fill", Inks.Hex(Ink.White))),
            Svg.Text(Margin, 56, Shorten.Name(title, large, PlanFrame.SheetWidth - (3 * Margin), 1), "title"),
            Svg.Text(Margin, 82, $"{kind} · notes of {matter.Dates} · engine {matter.Answers.Engine}, practice book {matter.Answers.Book} · {PaperMatter.Prevail}", "under"),
            content));
    }
}
