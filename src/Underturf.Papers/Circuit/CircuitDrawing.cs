using System.Xml.Linq;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Papers;

/// <summary>The wires of the stations that are on, as a tree from the controller: each stretch with its wire and lost volts, each place with the volts there.</summary>
public static class CircuitDrawing
{
    private const double Left = 60, Top = 130, Step = 210, Lane = 124, Margin = 40, Radius = 7;

    private const string Style = Svg.Lettering + "\n" + """
        .title { font-size: 24px; font-weight: 700; } .under { font-size: 13px; fill: #555d58; } .name { font-size: 14px; font-weight: 700; }
        .body { font-size: 12.5px; } .small { font-size: 11.5px; fill: #555d58; } .weak { font-size: 12.5px; font-weight: 700; }
        """;

    /// <param name="usUnits">Lengths in feet, else in metres.</param>
    public static byte[] Make(CircuitAnswer circuit, bool usUnits) => Svg.Bytes(Draw(circuit, usUnits));

    private static XDocument Draw(CircuitAnswer circuit, bool usUnits)
    {
        var tree = CircuitTree.Of(circuit);
        var (width, height) = (Left + (tree.Depth * Step) + 290, Top + (tree.Lanes * Lane) + Margin);
        var names = string.Join(", ", circuit.Stations.Select(s => s.Station));
        var title = $"{(circuit.Stations.Count == 1 ? "Station" : "Stations")} {names} on, {circuit.Controller}";
        return new XDocument(new XElement(
            Svg.Space + "svg",
            new XAttribute("viewBox", $"0 0 {Svg.N(width)} {Svg.N(height)}"),
            new XAttribute("role", "img"),
            new XElement(Svg.Space + "title", PlainText.Of(title)),
            new XElement(Svg.Space + "style", Style),
            Svg.Rect(0, 0, width, height, ("fill", Inks.Hex(Ink.White))),
            Svg.Text(Margin, 46, title, "title"),
            Svg.Text(Margin, 70, $"supply {circuit.SupplyVolts:0.0} V open, {circuit.TerminalVolts:0.0} V at the terminal, {circuit.CommonAmperes:0.00} A in the common · nothing broken · engine {circuit.Engine}, practice book {circuit.Book}", "under"),
            Svg.Group("runs", circuit.Runs.SelectMany(r => Run(r, tree, usUnits))),
            Svg.Group("places", tree.Places.SelectMany(p => Place(p, tree, circuit)))));
    }

    private static IEnumerable<XElement> Run(RunOnCircuit run, CircuitTree tree, bool usUnits)
    {
        var ((x1, y1), (x2, y2)) = (At(tree, run.From), At(tree, run.To));
        var elbow = x1 + 30;
        yield return Svg.Line([(x1, y1), (elbow, y2), (x2, y2)], closed: false, ("fill", "none"), ("stroke", Inks.Hex(Ink.Ink)), ("stroke-width", "2.5"), ("stroke-linejoin", "round"));
        var length = Say.Length(run.LengthMetres, usUnits);
        var wire = run.Wire == run.Common ? run.Wire : $"{run.Wire}, common {run.Common}";
        yield return Svg.Text(elbow + 8, y2 - 9, $"{length}, {run.LostVolts:0.0} V lost", "body");
        yield return Svg.Text(elbow + 8, y2 + 18, Shorten.Name(wire, Styles.Small, Step - 50, 1), "small");
    }

    private static IEnumerable<XElement> Place(string place, CircuitTree tree, CircuitAnswer circuit)
    {
        var (x, y) = At(tree, place);
        var isController = place == circuit.Controller;
        yield return isController
            ? Svg.Rect(x - 11, y - 11, 22, 22, ("fill", Inks.Hex(Ink.Accent)))
            : Svg.Circle(x, y, Radius, ("fill", Inks.Hex(Ink.White)), ("stroke", Inks.Hex(Ink.Ink)), ("stroke-width", "2.5"));
        var run = circuit.Runs.FirstOrDefault(r => r.To == place);
        yield return Svg.Text(x + 2, y - 30, isController ? place : $"{place}, {run?.FarVolts ?? 0:0.0} V", "name");
        var line = 0;
        foreach (var (station, valve) in circuit.Stations.SelectMany(s => s.Valves.Select(v => (s.Station, v))).Where(v => v.v.Place == place))
        {
            yield return Svg.Text(x + 2, y + 38 + (16 * line++), $"station {station}: {valve.Does}, {valve.Volts:0.0} V, {valve.Amperes:0.00} A", valve.Does == "holds" ? "body" : "weak");
        }
    }

    private static (double X, double Y) At(CircuitTree tree, string place) =>
        (Left + (tree.DepthOf(place) * Step), Top + (tree.LaneOf(place) * Lane));
}
