using System.Globalization;
using System.Xml.Linq;
using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Papers;

/// <summary>The map sheet of a search: likely ground over the plan, numbered stops, and beside it what to do at each.</summary>
public static class SearchSheet
{
    private const double ColumnLeft = 1116, ColumnWidth = 284, Margin = 40, TextRow = 17, Stop = 11;

    private const int MostSteps = 12;

    private const string Style = Svg.Lettering + "\n" + """
        .title { font-size: 30px; font-weight: 700; } .under { font-size: 14px; fill: #555d58; } .head { font-size: 14px; font-weight: 700; }
        .body { font-size: 13px; } .name { font-size: 13px; font-weight: 600; } .small { font-size: 11.5px; } .ground { font-size: 11.5px; fill: #555d58; }
        .stop { font-size: 12px; font-weight: 700; fill: #ffffff; } .halo { paint-order: stroke; stroke: #ffffff; stroke-width: 3px; stroke-linejoin: round; }
        """;

    private static readonly TextStyle measure = new(Weight.Regular, 13, Ink.Ink), large = new(Weight.Bold, 30, Ink.Ink);

    /// <returns>An SVG file, or the problem that there is no plan to draw on.</returns>
    public static Outcome<byte[]> Make(Notebook notebook, LocationAnswer location)
    {
        if (location.Heat is null)
        {
            return new Problem("ground", "has no plan: what is known is by named spots", "Read them from the list, or note ground with positions");
        }

        var matter = new PaperMatter(notebook, new Answers(location.Engine, location.Book, [], []));
        return Svg.Bytes(Draw(matter, location));
    }

    private static XDocument Draw(PaperMatter matter, LocationAnswer location)
    {
        var content = PlanContent.Of(matter);
        var frame = PlanFrame.Of(content.Positions.Concat((location.Route?.Steps ?? []).Select(s => s.At).OfType<Position>()));
        var column = new List<XElement>();
        var bottom = Column(column, matter, location);
        var title = location.Things.Count == 1 ? $"Where to look: {location.Things[0].Name}" : $"Where to look: {location.Things.Count} hidden things";
        var height = Math.Max(frame.Top + frame.Height, bottom) + Margin;
        return new XDocument(new XElement(
            Svg.Space + "svg",
            new XAttribute("viewBox", $"0 0 {Svg.N(PlanFrame.SheetWidth)} {Svg.N(height)}"),
            new XAttribute("role", "img"),
            new XElement(Svg.Space + "title", $"{title}, {matter.PropertyName}"),
            new XElement(Svg.Space + "style", Style),
            GroundDrawing.Defs(),
            Clip(frame),
            Svg.Rect(0, 0, PlanFrame.SheetWidth, height, ("fill", Inks.Hex(Ink.White))),
            Svg.Text(Margin, 56, Shorten.Name(title, large, PlanFrame.SheetWidth - (3 * Margin), 1), "title"),
            Svg.Text(Margin, 82, $"{PlanLabel.Short(matter.PropertyName)} · notes of {matter.Dates} · engine {location.Engine}, practice book {location.Book} · {PaperMatter.Prevail}", "under"),
            Map(matter, content, frame, location),
            Svg.Group("column", column)));
    }

    private static XElement Clip(PlanFrame frame) => new(
        Svg.Space + "clipPath", new XAttribute("id", "map"), Svg.Rect(frame.Left, frame.Top, frame.Width, frame.Height));

    private static XElement Map(PaperMatter matter, PlanContent content, PlanFrame frame, LocationAnswer location)
    {
        var steps = Steps(location);
        return Svg.Group(
            "map",
            [
                .. content.Ground.OrderBy(g => g.Shape.Count <= 2).Select(g => GroundDrawing.Draw(g, frame)),
                Heat(location.Heat!, frame),
                Svg.Rect(frame.Left, frame.Top, frame.Width, frame.Height, ("fill", "none"), ("stroke", Inks.Hex(Ink.Rule))),
                .. content.Runs.Select(r => Symbols.Run([.. r.Line.Select(frame.At)], r.Grade)),
                .. content.Things.Select(t => Symbols.Draw(t.Kind, frame.At(t.At).X, frame.At(t.At).Y, t.Grade, t.HoldsValves)),
                .. content.Things.Select(t => Svg.Text(frame.At(t.At).X + Symbols.Radius + 4, frame.At(t.At).Y + 4, PlanLabel.Short(t.Name), "small halo")),
                .. steps.Count > 1 ? [Svg.Line([.. steps.Select(s => frame.At(s.At!.Value))], false, ("fill", "none"), ("stroke", Inks.Hex(Ink.Ink)), ("stroke-width", "1.5"), ("stroke-dasharray", "2 4"))] : Array.Empty<XElement>(),
                .. steps.SelectMany((s, i) => Number(frame.At(s.At!.Value), i + 1)),
                ScaleBar.Draw(frame, matter.UsesUsUnits, frame.Left + 24, frame.Top + frame.Height - 42),
                ScaleBar.North(frame.Left + frame.Width - 40, frame.Top + 24),
            ]);
    }

    private static List<SearchStep> Steps(LocationAnswer location) => [.. (location.Route?.Steps ?? []).Where(s => s.At is not null).Take(MostSteps)];

    private static XElement Heat(HeatMap heat, PlanFrame frame)
    {
        var group = Svg.Group("heat", HeatContours.Of(heat).Select(level => Svg.Path(
            string.Concat(level.Rings.Select(ring => "M" + string.Join(" L", ring.Select(p => $"{Svg.N(frame.At(p).X)} {Svg.N(frame.At(p).Y)}")) + " Z ")).TrimEnd(),
            ("fill", Inks.Hex(Ink.Accent)), ("fill-opacity", "0.22"), ("fill-rule", "evenodd"), ("stroke", Inks.Hex(Ink.Accent)), ("stroke-opacity", "0.5"), ("stroke-width", "1"))));
        group.SetAttributeValue("clip-path", "url(#map)");
        return group;
    }

    private static IEnumerable<XElement> Number((double X, double Y) at, int number)
    {
        yield return Svg.Circle(at.X, at.Y, Stop, ("fill", Inks.Hex(Ink.Ink)), ("stroke", Inks.Hex(Ink.White)), ("stroke-width", "2"));
        yield return Svg.Text(at.X, at.Y + 4, number.ToString(CultureInfo.InvariantCulture), "stop", ("text-anchor", "middle"));
    }

    private static double Column(List<XElement> column, PaperMatter matter, LocationAnswer location)
    {
        var y = PlanFrame.MapTop + 16;
        void Head(string text)
        {
            column.Add(Svg.Text(ColumnLeft, y, text, "head"));
            y += TextRow + 5;
        }

        void Lines(string text)
        {
            foreach (var line in TextWrap.Lines(Shorten.Name(text, measure, ColumnWidth / PlanLabel.StandInFaceRatio, 6), measure, ColumnWidth / PlanLabel.StandInFaceRatio))
            {
                column.Add(Svg.Text(ColumnLeft, y, line, "body"));
                y += TextRow;
            }

            y += 6;
        }

        Head("Likely ground");
        foreach (var (i, level) in location.Heat!.Limits.OrderByDescending(l => l.Probability).Index())
        {
            column.AddRange(Enumerable.Range(0, i + 1).Select(_ => Svg.Rect(ColumnLeft, y - 11, 28, 15, ("fill", Inks.Hex(Ink.Accent)), ("fill-opacity", "0.22"), ("stroke", Inks.Hex(Ink.Accent)), ("stroke-opacity", "0.5"))));
            column.Add(Svg.Text(ColumnLeft + 40, y, $"holds it with {Say.Share(level.Probability)}", "body"));
            y += TextRow + 5;
        }

        y += 8;
        if (location.Choices is [{ Minutes: > 0 } first, ..])
        {
            Head("First");
            Lines(string.Create(CultureInfo.InvariantCulture, $"{Sentence.Upper(first.Say)}{(first.At is { } at ? $", {at}" : string.Empty)}, {first.Minutes:0} min. {first.Caution}"));
        }

        Head(location.Route is null ? "No search pays" : "Search, in this order");
        foreach (var caution in (location.Route?.Steps ?? []).SelectMany(s => s.Efforts).Select(e => e.Caution).Where(c => c.Length > 0).Distinct())
        {
            Lines(caution);
        }

        foreach (var (i, step) in Steps(location).Index())
        {
            column.AddRange(Number((ColumnLeft + Stop, y - 4), i + 1));
            column.Add(Svg.Text(ColumnLeft + 30, y, $"{Say.Share(step.Found)}, {Say.Length(step.AcrossMetres, matter.UsesUsUnits)} across", "name"));
            y += TextRow;
            Lines($"{step.Where}: {string.Join(", then ", step.Efforts.Select(e => string.Create(CultureInfo.InvariantCulture, $"{e.How} {Math.Max(1, e.Minutes):0} min")))}");
        }

        if (location.Route is { } route)
        {
            Lines(string.Create(CultureInfo.InvariantCulture, $"{Say.Share(route.Found)} to find it. Then stop: more costs more than it is worth."));
        }

        return y;
    }
}
