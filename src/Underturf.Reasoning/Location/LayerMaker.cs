using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Property;

namespace Underturf.Reasoning.Location;

/// <summary>Layers of each form. Where a thing made the sign, they are taken beside what they are on the average over all ground.</summary>
internal sealed class LayerMaker(GroundCells cells)
{
    /// <summary>Beyond so many spreads a sign is not looked for.</summary>
    private const double Spreads = 5;

    /// <summary>Left by the thing within a spread of a point, a line or an outline.</summary>
    public Layer Near(IReadOnlyList<GroundShape> shapes, double spreadMetres)
    {
        var layer = new double[cells.Count];
        foreach (var shape in shapes)
        {
            foreach (var cell in cells.Around(shape.Points, Spreads * spreadMetres))
            {
                var metres = shape.Contains(cells.Middle(cell)) ? 0 : shape.DistanceMetresTo(cells.Middle(cell));
                layer[cell] += Bell(metres / spreadMetres);
            }
        }

        return Beside(layer);
    }

    /// <summary>Chance that it is not perceived from a point.</summary>
    public Layer Unperceived(IReadOnlyList<Position> points, double hit, double spreadMetres)
    {
        var layer = Ones();
        foreach (var at in points)
        {
            foreach (var cell in cells.Around([at], Spreads * spreadMetres))
            {
                layer[cell] *= 1 - (hit * Bell(cells.Middle(cell).DistanceMetresTo(at) / spreadMetres));
            }
        }

        return new Layer(layer, 1);
    }

    /// <summary>Not noticed by whoever followed a path; the last stretch, to its end, is left out.</summary>
    public Layer Passed(IReadOnlyList<Position> path, double noticed, double spreadMetres, double lastMetres)
    {
        var layer = Ones();
        if (path.Count > 1)
        {
            var way = GroundShape.Line(path);
            foreach (var cell in cells.Around(path, Spreads * spreadMetres))
            {
                var at = cells.Middle(cell);
                layer[cell] = at.DistanceMetresTo(path[^1]) < lastMetres ? 1 : 1 - (noticed * Bell(way.DistanceMetresTo(at) / spreadMetres));
            }
        }

        return new Layer(layer, 1);
    }

    /// <summary>
    /// Points in the order of their distance from it, the nearest first, each drawn from those left in proportion to exp(-distance/spread):
    /// Plackett and Luce's model of a ranking.
    /// </summary>
    public Layer Order(IReadOnlyList<Position> points, double spreadMetres)
    {
        var layer = new double[cells.Count];
        for (var cell = 0; cell < layer.Length; cell++)
        {
            var (log, left) = (0.0, double.NegativeInfinity);
            for (var i = points.Count - 1; i >= 0; i--)
            {
                var worth = -cells.Middle(cell).DistanceMetresTo(points[i]) / spreadMetres;
                left = LogMath.LogAdd(left, worth);
                log += worth - left;
            }

            layer[cell] = Math.Exp(log);
        }

        return Beside(layer);
    }

    /// <summary>At a distance along a conductor from a point: straight, but for its usual detour.</summary>
    public Layer Along(Position from, double metres, double detour, double spreadMetres)
    {
        var layer = new double[cells.Count];
        for (var cell = 0; cell < layer.Length; cell++)
        {
            layer[cell] = Bell((metres - (detour * cells.Middle(cell).DistanceMetresTo(from))) / spreadMetres);
        }

        return Beside(layer);
    }

    /// <summary>Chance that a search left it, from how often each cell was covered.</summary>
    public static Layer Left(double[] covered, double sees)
    {
        var layer = new double[covered.Length];
        for (var cell = 0; cell < layer.Length; cell++)
        {
            layer[cell] = covered[cell] == 0 ? 1 : 1 - (sees * (1 - Math.Exp(-covered[cell])));
        }

        return new Layer(layer, 1);
    }

    /// <summary>Cells of a piece of ground: of an outline, of a disc about each point, or the nearest to it where it holds none.</summary>
    public IReadOnlyList<int> Piece(IReadOnlyList<Position> where, double withinMetres)
    {
        if (where.Count == 0)
        {
            return [];
        }

        var shape = GroundShape.Outline(where);
        if (shape.Closed)
        {
            return [.. cells.Around(shape.Points, 0).Where(c => shape.Contains(cells.Middle(c)))];
        }

        var disc = cells.Around(shape.Points, withinMetres).Where(c => shape.DistanceMetresTo(cells.Middle(c)) <= withinMetres).ToList();
        return disc.Count > 0 ? disc : [.. cells.Around(shape.Points, Math.Max(withinMetres, cells.SideMetres)).OrderBy(c => shape.DistanceMetresTo(cells.Middle(c))).Take(1)];
    }

    private double[] Ones()
    {
        var ones = new double[cells.Count];
        Array.Fill(ones, 1);
        return ones;
    }

    /// <summary>Divided by its mean over the ground; a sign off all ground says nothing of any cell.</summary>
    private Layer Beside(double[] layer)
    {
        var mean = cells.Mean(layer);
        for (var cell = 0; cell < layer.Length && mean > 0; cell++)
        {
            layer[cell] /= mean;
        }

        return mean > 0 ? new Layer(layer, 0) : new Layer(Ones(), 1);
    }

    private static double Bell(double spreads) => Math.Exp(-0.5 * spreads * spreads);
}
