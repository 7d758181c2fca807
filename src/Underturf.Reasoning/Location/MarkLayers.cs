using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Location;

/// <summary>How strongly each mark of the practice book is felt at a point or in each cell: 1 right at it, falling off with the distance.</summary>
internal sealed class MarkLayers
{
    /// <summary>Beyond so many reaches, or spreads, nothing is felt.</summary>
    private const double Reaches = 5, Spreads = 3;

    /// <summary>No distance is shorter, where its logarithm is taken.</summary>
    private const double LeastMetres = 0.1;

    private const string Found = "found";

    private readonly PropertyView view;
    private readonly LocatingPractice book;
    private readonly GroundCells cells;
    private readonly Dictionary<string, GroundShape[]> shapes;
    private readonly Dictionary<GroundMark, double[]> common = [];
    private readonly LocationMemory memory;

    /// <param name="found">Boxes and lone valves that have a position.</param>
    public MarkLayers(PropertyView view, LocatingPractice book, GroundCells cells, IReadOnlyList<Position> found, LocationMemory memory)
    {
        (this.view, this.book, this.cells, this.memory) = (view, book, cells, memory);
        shapes = view.Ground.Values.GroupBy(g => g.What).ToDictionary(g => g.Key, g => g.Select(GroundShape.Of).ToArray(), StringComparer.Ordinal);
        shapes["controller"] = [.. view.Controllers.Values.Select(c => c.Position).OfType<Position>().Select(GroundShape.Point)];
        shapes["cable"] = [.. view.Cables.Values.Where(c => c.Route.Count > 1).Select(c => GroundShape.Line(c.Route))];
        shapes[Found] = [.. found.Select(GroundShape.Point)];
    }

    /// <summary>What every thing has in common: each mark that is nobody's own.</summary>
    public IReadOnlyList<double[]> All => [.. book.Marks.Where(mark => !cells.IsGrid || Shapes(mark, OwnGround.None) is null).Select(Common)];

    /// <summary>Each mark in each cell, for one sought thing.</summary>
    /// <param name="keeps">Whether what is its own is kept too: for many things that would be too much.</param>
    public double[][] Of(Sought thing, bool keeps) =>
    [
        .. book.Marks.Select(mark => !mark.HoldsFor(thing.What) ? Nothing
            : cells.IsGrid && Shapes(mark, thing.Own) is { } own ? (keeps ? Kept(mark, own) : Layer(mark, own))
            : Common(mark)),
    ];

    /// <summary>Each mark at a point, for a thing that was found there: it is not beside itself.</summary>
    public double[] At(Position at, string what, OwnGround own) =>
        [.. book.Marks.Select(mark => !mark.HoldsFor(what) ? 0 : Value(mark, Shapes(mark, own) ?? [.. Shapes(mark).Where(s => mark.Of != Found || s.Points[0] != at)], at))];

    /// <summary>Each mark in some of the cells, for a thing of one kind.</summary>
    public double[][] In(int[] some, string what, OwnGround own) =>
    [
        .. book.Marks.Select(mark => !mark.HoldsFor(what) ? new double[some.Length]
            : cells.IsGrid && Shapes(mark, own) is { } shapes ? [.. some.Select(cell => Value(mark, shapes, cells.Middle(cell)))]
            : Pick(Common(mark), some)),
    ];

    private static double[] Pick(double[] layer, int[] some) => [.. some.Select(cell => layer[cell])];

    private double[] Common(GroundMark mark)
    {
        if (!common.TryGetValue(mark, out var layer))
        {
            layer = cells.IsGrid ? Kept(mark, Shapes(mark)) : SpotLayer(mark);
            common[mark] = layer;
        }

        return layer;
    }

    /// <summary>Spots have what their notes say.</summary>
    private double[] SpotLayer(GroundMark mark) => [.. cells.Spots.Select(spot => view.Spots[spot].Beside.Contains(mark.Name) ? 1.0 : 0)];

    private IReadOnlyList<GroundShape> Shapes(GroundMark mark) => shapes.GetValueOrDefault(mark.Of) ?? [];

    /// <summary>Shapes that mean one thing only; nothing where the mark is everybody's.</summary>
    private static IReadOnlyList<GroundShape>? Shapes(GroundMark mark, OwnGround own) => mark.Of switch
    {
        "watered" => own.Watered,
        "route" => own.Routes,
        "last" => own.Last,
        _ => null,
    };

    private double[] Nothing => memory.Keep(() => new double[cells.Count], cells);

    private double[] Kept(GroundMark mark, IReadOnlyList<GroundShape> of) => memory.Keep(() => Layer(mark, of), cells, mark, PointRow.Of(of));

    private double[] Layer(GroundMark mark, IReadOnlyList<GroundShape> of)
    {
        var layer = new double[cells.Count];
        foreach (var shape in of)
        {
            if (mark.By == GroundMeasure.Inside)
            {
                Fill(layer, shape);
            }
            else
            {
                foreach (var (from, to) in Sides(mark, shape))
                {
                    Brush(layer, mark, from, to);
                }
            }
        }

        return layer;
    }

    private void Fill(double[] layer, GroundShape shape)
    {
        foreach (var cell in cells.Around(shape.Points, 0))
        {
            layer[cell] = layer[cell] > 0 || shape.Contains(cells.Middle(cell)) ? 1 : 0;
        }
    }

    private void Brush(double[] layer, GroundMark mark, Position from, Position to)
    {
        foreach (var cell in cells.Around([from, to], Farthest(mark)))
        {
            layer[cell] = Math.Max(layer[cell], Felt(mark, GroundShape.DistanceMetres(from, to, cells.Middle(cell))));
        }
    }

    private static double Value(GroundMark mark, IReadOnlyList<GroundShape> of, Position at) =>
        mark.By == GroundMeasure.Inside
            ? (of.Any(s => s.Contains(at)) ? 1 : 0)
            : of.SelectMany(s => Sides(mark, s)).Select(s => Felt(mark, GroundShape.DistanceMetres(s.From, s.To, at))).DefaultIfEmpty(0).Max();

    private static double Felt(GroundMark mark, double metres)
    {
        if (metres > Farthest(mark))
        {
            return 0;
        }

        var off = mark.By == GroundMeasure.Away ? Math.Log(Math.Max(metres, LeastMetres) / mark.ReachMetres) / mark.Spread : 0;
        return mark.By == GroundMeasure.Away ? Math.Exp(-0.5 * off * off) : Math.Exp(-metres / mark.ReachMetres);
    }

    private static double Farthest(GroundMark mark) => mark.ReachMetres * (mark.By == GroundMeasure.Away ? Math.Exp(Spreads * mark.Spread) : Reaches);

    private static IEnumerable<(Position From, Position To)> Sides(GroundMark mark, GroundShape shape) =>
        mark.By == GroundMeasure.Corner ? shape.Points.Select(p => (p, p)) : shape.Sides();
}
