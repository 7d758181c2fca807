using System.Globalization;
using System.Xml.Linq;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Telling;

namespace Underturf.Papers;

/// <summary>The map sheet of a search: likely ground over the plan, numbered stops, and beside it what to do at each.</summary>
public static class SearchSheet
{
    private const int MostSteps = 12, MostLines = 6;

    private const double StopRadius = 11;

    private static readonly ILookup<string, string> nobody = Array.Empty<string>().ToLookup(p => p);

    /// <returns>An SVG file, or the problem that there is no plan to draw on.</returns>
    public static Outcome<byte[]> Make(Notebook notebook, LocationAnswer location) => location.Heat is { } heat
        ? Svg.Bytes(Draw(new PaperMatter(notebook, new Answers(location.Engine, location.Book, [], [])), location, heat))
        : new Problem("ground", "has no plan: what is known is by named spots", "Read them from the list, or note ground with positions");

    private static XDocument Draw(PaperMatter matter, LocationAnswer location, HeatMap heat)
    {
        var content = PlanContent.Of(matter);
        var steps = (location.Route?.Told ?? []).Take(MostSteps).ToList();
        var frame = PlanFrame.Of(content.Positions.Concat(steps.Select(s => s.At!.Value)));
        var stops = steps.Select(s => frame.At(s.At!.Value)).ToList();
        var map = new PlanMap(content, frame, matter.UsesUsUnits).Draw(nobody, Heat(heat, frame), [.. Way(stops), .. stops.SelectMany((at, i) => Stop(at, i + 1))], [.. stops.Select(at => (at.X, at.Y, StopRadius))]);
        var column = new SheetColumn();
        Ground(column, heat);
        First(column, location);
        Search(column, matter, location, steps);
        var title = location.Things.Count == 1 ? $"Where to look: {location.Things[0].Name}" : $"Where to look: {location.Things.Count} hidden things";
        return MapSheet.Of(matter, title, title, PlanLabel.Short(matter.PropertyName), Math.Max(frame.Top + frame.Height, column.Y), [Clip(frame), map, column.Draw("column")]);
    }

    private static XElement Clip(PlanFrame frame) => new(
        Svg.Space + "clipPath", new XAttribute("id", "map"), Svg.Rect(frame.Left, frame.Top, frame.Width, frame.Height));

    private static XElement Heat(HeatMap heat, PlanFrame frame)
    {
        var group = Svg.Group("heat", HeatContours.Of(heat).Select(level => Svg.Path(
            string.Join(' ', level.Rings.Select(ring => $"M{string.Join(" L", ring.Select(frame.At).Select(p => $"{Svg.N(p.X)} {Svg.N(p.Y)}"))} Z")), [("fill-rule", "evenodd"), .. Look()])));
        group.SetAttributeValue("clip-path", "url(#map)");
        return group;
    }

    /// <summary>Each ground lies in the wider one, so that it gets darker inwards.</summary>
    private static (string Name, string Value)[] Look() =>
        [("fill", Inks.Hex(Ink.Accent)), ("fill-opacity", "0.22"), ("stroke", Inks.Hex(Ink.Accent)), ("stroke-opacity", "0.5"), ("stroke-width", "1")];

    private static IEnumerable<XElement> Way(IReadOnlyList<(double X, double Y)> stops) =>
        stops.Count > 1 ? [Svg.Line(stops, false, ("fill", "none"), ("stroke", Inks.Hex(Ink.Ink)), ("stroke-width", "1.5"), ("stroke-dasharray", "2 4"))] : [];

    private static IEnumerable<XElement> Stop((double X, double Y) at, int number) =>
    [
        Svg.Circle(at.X, at.Y, StopRadius, ("fill", Inks.Hex(Ink.Ink)), ("stroke", Inks.Hex(Ink.White)), ("stroke-width", "2")),
        Svg.Text(at.X, at.Y + 4, number.ToString(CultureInfo.InvariantCulture), "pill", ("text-anchor", "middle")),
    ];

    private static void Ground(SheetColumn column, HeatMap heat)
    {
        column.Head("Likely ground");
        foreach (var (i, level) in heat.Limits.OrderByDescending(l => l.Probability).Index())
        {
            column.Sign(Enumerable.Range(0, i + 1).Select(_ => Svg.Rect(SheetColumn.Left, column.Y - 8, 28, 16, Look())), $"holds it with {Say.Share(level.Probability)}", "body");
        }
    }

    private static void First(SheetColumn column, LocationAnswer location)
    {
        if (location.Choices is [{ Minutes: > 0 } first, ..])
        {
            column.Head("First");
            column.Paragraph(string.Create(CultureInfo.InvariantCulture, $"{Sentence.Upper(first.Say)}{(first.At is { } at ? $", {at}" : string.Empty)}, {first.Minutes:0} min. {first.Caution}"), MostLines);
        }
    }

    private static void Search(SheetColumn column, PaperMatter matter, LocationAnswer location, IReadOnlyList<SearchStep> steps)
    {
        if (location.Route is not { } route)
        {
            column.Head("Search");
            column.Paragraph(SearchWords.NoSearch(location), MostLines);
            return;
        }

        column.Head("Search, in this order");
        foreach (var caution in route.Steps.SelectMany(s => s.Efforts).Select(e => e.Caution).Where(c => c.Length > 0).Distinct())
        {
            column.Paragraph(caution, MostLines);
        }

        foreach (var (i, step) in steps.Index())
        {
            column.Sign(Stop((SheetColumn.Left + StopRadius, column.Y), i + 1), $"{Say.Share(step.Found)}, {Say.Length(step.AcrossMetres, matter.UsesUsUnits)} across", "name");
            column.Paragraph($"{step.Where}: {string.Join(", then ", step.Efforts.Select(e => string.Create(CultureInfo.InvariantCulture, $"{e.How} {Math.Max(1, e.Minutes):0} min")))}", MostLines);
        }

        column.Paragraph($"{SearchWords.Found(location, route)}. {SearchWords.Stop}", MostLines);
    }
}
