using System.Xml.Linq;

namespace Underturf.Papers;

/// <summary>Everything with a position, to scale, north up.</summary>
internal sealed class PlanMap(PlanContent content, PlanFrame frame, bool usUnits)
{
    /// <param name="suspects">Places to be marked, with the lines that say why.</param>
    /// <param name="beneath">What lies on the ground and under everything else.</param>
    /// <param name="over">What lies over everything else.</param>
    /// <param name="kept">Points that labels keep off, each with its radius.</param>
    public XElement Draw(ILookup<string, string> suspects, XElement? beneath = null, IReadOnlyList<XElement>? over = null, IReadOnlyList<(double X, double Y, double Radius)>? kept = null)
    {
        var placer = Placer(kept ?? []);
        return Svg.Group(
            "map",
            [
                .. content.Ground.Where(g => g.Shape.Count > 2).Select(g => GroundDrawing.Draw(g, frame)),
                .. RootDrawing.Of(content, frame),
                .. content.Ground.Where(g => g.Shape.Count <= 2).Select(g => GroundDrawing.Draw(g, frame)),
                .. new[] { beneath }.OfType<XElement>(),
                Edge(frame),
                .. content.Pipes.Select(p => Symbols.Pipe([.. p.Line.Select(frame.At)], p.Grade)),
                .. content.Runs.Select(r => Symbols.Run([.. r.Line.Select(frame.At)], r.Grade)),
                .. TieDrawing.Of(content, frame),
                .. content.Things.SelectMany(t => Thing(t, suspects.Contains(t.Name), placer)),
                .. PlanLabels.Of(content, frame, suspects).Select(l => l.Draw(placer)),
                .. over ?? [],
                ScaleBar.Draw(frame, usUnits, frame.Left + 24, frame.Top + frame.Height - 42),
                ScaleBar.North(frame.Left + frame.Width - 40, frame.Top + 24),
            ]);
    }

    public static XElement Edge(PlanFrame frame) => Svg.Rect(frame.Left, frame.Top, frame.Width, frame.Height, ("fill", "none"), ("stroke", Inks.Hex(Ink.Rule)));

    private LabelPlacer Placer(IReadOnlyList<(double X, double Y, double Radius)> kept)
    {
        var placer = new LabelPlacer(frame);
        placer.Keep(frame.Left + frame.Width - 40, frame.Top + 50, 36);
        placer.Keep(frame.Left + 70, frame.Top + frame.Height - 30, 28);
        placer.Keep(frame.Left + 200, frame.Top + frame.Height - 30, 90);
        foreach (var (x, y, radius) in kept)
        {
            placer.Keep(x, y, radius);
        }

        foreach (var line in content.Runs.Concat(content.Pipes).Select(r => r.Line).Concat(content.Ground.Where(g => GroundDrawing.IsLine(g)).Select(g => g.Shape)))
        {
            placer.KeepLine([.. line.Select(frame.At)]);
        }

        return placer;
    }

    private IEnumerable<XElement> Thing(PlanThing thing, bool suspect, LabelPlacer placer)
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
