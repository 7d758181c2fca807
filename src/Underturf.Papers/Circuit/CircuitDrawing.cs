using System.Xml.Linq;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Papers;

/// <summary>The wires of the stations that are on, as a tree from the controller: each stretch with its wire and lost volts, each place with the volts there.</summary>
public static class CircuitDrawing
{
    private const double Left = 60, Margin = 40, Radius = 7, LineHeight = 16, UnderTitle = 70;
    private const double LeastLane = 124, LaneHead = 66, OneCommonStep = 210, CommonsStep = 290, LastStep = 290, WarningWidth = 980, SmallSize = 11.5;

    private const string Style = Svg.Lettering + "\n" + """
        .title { font-size: 24px; font-weight: 700; } .under { font-size: 13px; fill: #555d58; } .name { font-size: 14px; font-weight: 700; }
        .body { font-size: 12.5px; } .small { font-size: 11.5px; fill: #555d58; } .weak { font-size: 12.5px; font-weight: 700; }
        """;

    /// <param name="usUnits">Lengths in feet, else in metres.</param>
    public static byte[] Make(CircuitAnswer circuit, bool usUnits) => Svg.Bytes(Draw(circuit, usUnits));

    private static XDocument Draw(CircuitAnswer circuit, bool usUnits)
    {
        var (title, under, grid) = (CircuitNotes.Title(circuit), CircuitNotes.Under(circuit), Grid.Of(circuit));
        var width = Math.Max(grid.Width, circuit.Warnings.Count > 0 ? WarningWidth : 0);
        return new XDocument(new XElement(
            Svg.Space + "svg",
            new XAttribute("viewBox", $"0 0 {Svg.N(width)} {Svg.N(grid.Height)}"),
            new XAttribute("role", "img"),
            new XElement(Svg.Space + "title", PlainText.Of(title)),
            new XElement(Svg.Space + "style", Style),
            Svg.Rect(0, 0, width, grid.Height, ("fill", Inks.Hex(Ink.White))),
            Svg.Text(Margin, 46, title, "title"),
            Svg.Group("under", under.Select((u, i) => Svg.Text(Margin, UnderTitle + (LineHeight * i), u.Text, u.IsWeak ? "weak" : "under"))),
            Svg.Group("runs", circuit.Runs.SelectMany(r => Run(r, grid, usUnits))),
            Svg.Group("places", grid.Tree.Places.SelectMany(p => Place(p, grid, circuit)))));
    }

    private static IEnumerable<XElement> Run(RunOnCircuit run, Grid grid, bool usUnits)
    {
        var ((x1, y1), (x2, y2)) = (grid.At(run.From), grid.At(run.To));
        var elbow = x1 + 30;
        yield return Svg.Line([(x1, y1), (elbow, y2), (x2, y2)], closed: false, ("fill", "none"), ("stroke", Inks.Hex(Ink.Ink)), ("stroke-width", "2.5"), ("stroke-linejoin", "round"), ("stroke-dasharray", run.Guessed ? "6 4" : "none"));
        var length = Say.Length(run.LengthMetres, usUnits);
        var wire = run.Wire == run.Back ? run.Wire : $"{run.Wire}, common {run.Back}";
        var commons = run.Commons is ["usual"] ? wire : $"{wire} ({string.Join(", ", run.Commons)})";
        yield return Svg.Text(elbow + 8, y2 - 9, $"{length}, {run.LostVolts:0.0} V lost", "body");
        yield return Svg.Text(elbow + 8, y2 + 18, Shorten.Name(commons, Styles.Small, (grid.Step - 50) * Styles.Small.SizePoints / SmallSize, 1), "small");
    }

    private static IEnumerable<XElement> Place(string place, Grid grid, CircuitAnswer circuit)
    {
        var (x, y) = grid.At(place);
        var isController = place == circuit.Controller;
        yield return isController
            ? Svg.Rect(x - 11, y - 11, 22, 22, ("fill", Inks.Hex(Ink.Accent)))
            : Svg.Circle(x, y, Radius, ("fill", Inks.Hex(Ink.White)), ("stroke", Inks.Hex(Ink.Ink)), ("stroke-width", "2.5"));
        var run = circuit.Runs.FirstOrDefault(r => r.To == place);
        yield return Svg.Text(x + 2, y - 30, isController ? place : $"{place}, {run?.FarVolts ?? 0:0.0} V", "name");
        foreach (var (i, note) in CircuitNotes.At(place, circuit).Index())
        {
            var line = y + 38 + (LineHeight * i);
            yield return note.Bar is { } valve
                ? CircuitBar.Of(valve, circuit.Supply.OpenVolts, x + 2, line - 5)
                : Svg.Text(x + 2, line, note.Text, note.IsWeak ? "weak" : "body");
        }
    }

    /// <summary>Where places stand on the sheet: a lane as high as the longest list of lines, a step as wide as what is written on a stretch.</summary>
    private sealed record Grid(CircuitTree Tree, double Top, double Lane, double Step)
    {
        public double Width => Left + (Tree.Depth * Step) + LastStep;

        public double Height => Top + (Tree.Lanes * Lane) + Margin;

        public static Grid Of(CircuitAnswer circuit)
        {
            var tree = CircuitTree.Of(circuit);
            var lines = tree.Places.Max(p => CircuitNotes.At(p, circuit).Count);
            return new Grid(
                tree,
                UnderTitle + (LineHeight * CircuitNotes.Under(circuit).Count) + LaneHead,
                Math.Max(LeastLane, LaneHead + (LineHeight * lines) + Margin),
                circuit.Commons.Count > 1 ? CommonsStep : OneCommonStep);
        }

        public (double X, double Y) At(string place) => (Left + (Tree.DepthOf(place) * Step), Top + (Tree.LaneOf(place) * Lane));
    }
}
