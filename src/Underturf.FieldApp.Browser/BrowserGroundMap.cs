using Underturf.FieldLog;

namespace Underturf.FieldApp.Browser;

/// <summary>The map as the browser draws it: a plan goes over as arrays, a tap comes back as three numbers.</summary>
internal sealed class BrowserGroundMap : IGroundMap
{
    public Task ReadyAsync() => MapCalls.ReadyAsync();

    public void Open(string element, string of, bool feet, Action<GroundTap> tapped) =>
        MapCalls.Open(element, of, feet, (east, north, metresPerPixel) => tapped(new GroundTap(new Position(east, north), metresPerPixel)));

    public void Draw(GroundPlan plan)
    {
        IReadOnlyList<GroundFeature> drawn = [.. plan.Features, .. plan.Roots];
        MapCalls.Draw(
            [.. drawn.Select(f => f.Kind)],
            [.. drawn.Select(f => GroundWords.Say(f.Grade))],
            [.. drawn.Select(f => f.Sign)],
            [.. drawn.Select(Form)],
            [.. drawn.Select(f => f.Shape.Count)],
            Metres(drawn.SelectMany(f => f.Shape)),
            Metres(plan.Extent()));
    }

    public void Mark(IReadOnlyList<GroundSign> signs) => MapCalls.Mark(
        [.. signs.Select(sign => sign.Next ? "next" : "")],
        [.. signs.Select(sign => sign.Words)],
        [.. signs.Select(sign => sign.Line.Count)],
        Metres(signs.SelectMany(sign => sign.Line)));

    public void Tie(IReadOnlyList<GroundTie> ties) => MapCalls.Tie(
        [.. ties.Select(tie => GroundWords.Say(tie.Grade))],
        [.. ties.Select(tie => tie.Words)],
        [.. ties.Select(tie => tie.Line.Count)],
        Metres(ties.SelectMany(tie => tie.Line)));

    public void Lay(string? address, PictureFit? fit, bool beneath) =>
        MapCalls.Lay(address, fit is null ? [] : [fit.Real, fit.Imaginary, fit.EastMetres, fit.NorthMetres], beneath);

    public void Here(Position at, double accuracyMetres) => MapCalls.Here(at.EastMetres, at.NorthMetres, accuracyMetres);

    public void Heat(HeatLayer? heat) => MapCalls.Heat(heat?.Picture ?? [], heat is null ? [] : [heat.MetresPerPixel, heat.NorthWest.EastMetres, heat.NorthWest.NorthMetres]);

    public void Route(IReadOnlyList<Position> stops, bool turns) => MapCalls.Route(Metres(stops), turns);

    public void Choose(int number) => MapCalls.Choose(number);

    public void Sketch(IReadOnlyList<Position> points, bool closed, string words) => MapCalls.Sketch(Metres(points), closed, words);

    public GroundTap Middle() => MapCalls.Middle() is [var east, var north, var metresPerPixel] ? new(new Position(east, north), metresPerPixel) : default;

    public void Zoom(int steps) => MapCalls.Zoom(steps);

    public void ShowWhole() => MapCalls.ShowWhole();

    public void Close() => MapCalls.Close();

    private static string Form(GroundFeature thing) => thing.Form switch
    {
        GroundForm.Point => "point",
        GroundForm.Line => "line",
        _ => "outline",
    };

    private static double[] Metres(IEnumerable<Position> positions) => [.. positions.SelectMany(p => (double[])[p.EastMetres, p.NorthMetres])];
}
