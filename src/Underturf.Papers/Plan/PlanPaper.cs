using System.Xml.Linq;

namespace Underturf.Papers;

/// <summary>The plan: everything with a position, to scale, north up, with the places that explanations point to.</summary>
internal static class PlanPaper
{
    private const double LegendLeft = 1116, LegendWidth = 284, Margin = 40;

    private const string Style = Svg.Lettering + "\n" + """
        .title { font-size: 30px; font-weight: 700; } .under { font-size: 14px; fill: #555d58; } .head { font-size: 14px; font-weight: 700; }
        .body { font-size: 13px; } .name { font-size: 13px; font-weight: 600; } .small { font-size: 11.5px; } .ground { font-size: 11.5px; fill: #555d58; }
        .pill { font-size: 11.5px; font-weight: 600; fill: #ffffff; } .halo { paint-order: stroke; stroke: #ffffff; stroke-width: 3px; stroke-linejoin: round; }
        .none { font-size: 18px; }
        """;

    public static byte[] Make(PaperMatter matter) => Svg.Bytes(Draw(matter));

    private static XDocument Draw(PaperMatter matter)
    {
        var content = PlanContent.Of(matter);
        var frame = PlanFrame.Of(content.Positions);
        var legend = new PlanLegend(LegendLeft, LegendWidth);
        var column = legend.Draw(content, matter);
        var band = new TieBand(frame);
        var ties = band.Draw(content, matter);
        var height = Math.Max(band.BottomUnits, legend.BottomUnits) + Margin;
        var title = PlanLabel.Short(matter.PropertyName);
        return new XDocument(new XElement(
            Svg.Space + "svg",
            new XAttribute("viewBox", $"0 0 {Svg.N(PlanFrame.SheetWidth)} {Svg.N(height)}"),
            new XAttribute("role", "img"),
            new XElement(Svg.Space + "title", $"Plan, {matter.PropertyName}"),
            new XElement(Svg.Space + "desc", $"Drawn from the notes of {matter.Dates} by Underturf, engine {matter.Answers.Engine}, practice book {matter.Answers.Book}"),
            new XElement(Svg.Space + "style", Style),
            GroundDrawing.Defs(),
            Svg.Rect(0, 0, PlanFrame.SheetWidth, height, ("fill", Inks.Hex(Ink.White))),
            Svg.Text(Margin, 56, title, "title"),
            Svg.Text(Margin, 82, $"Plan · notes of {matter.Dates} · engine {matter.Answers.Engine}, practice book {matter.Answers.Book} · {PaperMatter.Prevail}", "under"),
            Map(matter, content, frame),
            ties,
            column));
    }

    private static XElement Map(PaperMatter matter, PlanContent content, PlanFrame frame)
    {
        var edge = Svg.Rect(frame.Left, frame.Top, frame.Width, frame.Height, ("fill", "none"), ("stroke", Inks.Hex(Ink.Rule)));
        if (!content.Positions.Any())
        {
            return Svg.Group("map", edge, Svg.Text(frame.Left + (frame.Width / 2), frame.Top + (frame.Height / 2), "Nothing has a position yet: note where a box or the controller is.", "none", ("text-anchor", "middle")));
        }

        var suspects = SuspectPlaces.Of(matter);
        var placer = new LabelPlacer(frame);
        placer.Keep(frame.Left + frame.Width - 40, frame.Top + 50, 36);
        placer.Keep(frame.Left + 70, frame.Top + frame.Height - 30, 28);
        placer.Keep(frame.Left + 200, frame.Top + frame.Height - 30, 90);
        foreach (var line in content.Runs.Select(r => r.Line).Concat(content.Ground.Where(g => GroundDrawing.Kind(g) == "wall").Select(g => g.Shape)))
        {
            placer.KeepLine([.. line.Select(frame.At)]);
        }

        return Svg.Group(
            "map",
            [
                .. content.Ground.OrderBy(g => g.Shape.Count <= 2).Select(g => GroundDrawing.Draw(g, frame)),
                edge,
                .. content.Runs.Select(r => Symbols.Run([.. r.Line.Select(frame.At)], r.Grade)),
                .. TieDrawing.Of(content, frame),
                .. content.Things.SelectMany(t => Thing(t, frame, suspects.Contains(t.Name), placer)),
                .. PlanLabels.Of(content, frame, suspects).Select(l => l.Draw(placer)),
                ScaleBar.Draw(frame, matter.UsesUsUnits, frame.Left + 24, frame.Top + frame.Height - 42),
                ScaleBar.North(frame.Left + frame.Width - 40, frame.Top + 24),
            ]);
    }

    private static IEnumerable<XElement> Thing(PlanThing thing, PlanFrame frame, bool suspect, LabelPlacer placer)
    {
        var (x, y) = frame.At(thing.At);
        placer.Keep(x, y, Symbols.Radius + (suspect ? 5 : 0));
        if (suspect)
        {
            yield return Svg.Circle(x, y, Symbols.Radius + 5, ("fill", "none"), ("stroke", Inks.Hex(Ink.Accent)), ("stroke-width", "3"), ("class", "suspect"));
        }

        yield return Symbols.Draw(thing.Kind, x, y, thing.Grade, thing.HoldsValves);
    }
}
