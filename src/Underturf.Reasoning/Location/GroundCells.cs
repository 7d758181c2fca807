using Underturf.FieldLog;

namespace Underturf.Reasoning.Location;

/// <summary>The pieces of ground that a thing may lie in: a grid of cells, or named spots where there is no plan.</summary>
internal sealed class GroundCells
{
    private readonly Position[] middles;
    private readonly double[] areas;

    private GroundCells(Position[] middles, double[] areas, Position corner, double sideMetres, int wide) =>
        (this.middles, this.areas, Corner, SideMetres, Wide) = (middles, areas, corner, sideMetres, wide);

    public int Count => middles.Length;

    /// <summary>Cells in a row of the grid; zero where there is none.</summary>
    public int Wide { get; }

    public int Deep => Wide == 0 ? 0 : Count / Wide;

    public bool IsGrid => Wide > 0;

    /// <summary>South-west corner of the grid.</summary>
    public Position Corner { get; }

    public double SideMetres { get; }

    public double AreaSquareMetres { get; private init; }

    /// <summary>Ids of the spots, a cell each; empty for a grid.</summary>
    public IReadOnlyList<string> Spots { get; private init; } = [];

    public Position Middle(int cell) => middles[cell];

    public double Area(int cell) => areas[cell];

    /// <summary>A grid of squares over a rectangle, row by row from its south-west corner.</summary>
    public static GroundCells Grid(Position southWest, Position northEast, double sideMetres)
    {
        var wide = Math.Max(1, (int)Math.Ceiling((northEast.EastMetres - southWest.EastMetres) / sideMetres));
        var deep = Math.Max(1, (int)Math.Ceiling((northEast.NorthMetres - southWest.NorthMetres) / sideMetres));
        var (points, squares) = (new Position[wide * deep], new double[wide * deep]);
        Array.Fill(squares, sideMetres * sideMetres);
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = new Position(southWest.EastMetres + (((i % wide) + 0.5) * sideMetres), southWest.NorthMetres + (((i / wide) + 0.5) * sideMetres));
        }

        return new GroundCells(points, squares, southWest, sideMetres, wide) { AreaSquareMetres = squares.Sum() };
    }

    /// <summary>Spots, each in a place of its own.</summary>
    public static GroundCells Of(IReadOnlyList<string> spots, Position[] middles, double[] areas) => new(middles, areas, default, 0, 0) { Spots = spots, AreaSquareMetres = areas.Sum() };

    /// <summary>Mean of values over the ground, by area.</summary>
    public double Mean(double[] values)
    {
        var mean = 0.0;
        for (var cell = 0; cell < values.Length; cell++)
        {
            mean += values[cell] * areas[cell] / AreaSquareMetres;
        }

        return mean;
    }

    /// <summary>Cells whose middles lie in the rectangle around points, or so far beyond it.</summary>
    public IEnumerable<int> Around(IReadOnlyList<Position> points, double beyondMetres) => Within(
        points.Min(p => p.EastMetres) - beyondMetres, points.Min(p => p.NorthMetres) - beyondMetres, points.Max(p => p.EastMetres) + beyondMetres, points.Max(p => p.NorthMetres) + beyondMetres);

    /// <summary>Cells whose middles lie in a rectangle.</summary>
    private IEnumerable<int> Within(double west, double south, double east, double north)
    {
        if (!IsGrid)
        {
            for (var i = 0; i < Count; i++)
            {
                if (middles[i].EastMetres >= west && middles[i].EastMetres <= east && middles[i].NorthMetres >= south && middles[i].NorthMetres <= north)
                {
                    yield return i;
                }
            }

            yield break;
        }

        var (first, last) = (Column(west - Corner.EastMetres, true), Column(east - Corner.EastMetres, false));
        var (low, high) = (Row(south - Corner.NorthMetres, true), Row(north - Corner.NorthMetres, false));
        for (var row = low; row <= high; row++)
        {
            for (var column = first; column <= last; column++)
            {
                yield return (row * Wide) + column;
            }
        }
    }

    private int Column(double metres, bool up) => Index(metres, up, Wide);

    private int Row(double metres, bool up) => Index(metres, up, Deep);

    /// <summary>The first middle at or beyond a distance, or the last at or before it, held within the grid.</summary>
    private int Index(double metres, bool up, int count)
    {
        var at = Math.Clamp((metres / SideMetres) - 0.5, -1, count);
        return up ? Math.Max(0, (int)Math.Ceiling(at)) : Math.Min(count - 1, (int)Math.Floor(at));
    }
}
