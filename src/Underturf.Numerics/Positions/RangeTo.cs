namespace Underturf.Numerics;

/// <summary>A measured distance from a known point, with its standard deviation.</summary>
public readonly record struct RangeTo(double XMetres, double YMetres, double Metres, double SpreadMetres)
{
    /// <summary>Distance and direction from the point to a place; any direction from the point itself.</summary>
    public (double Metres, double X, double Y) Seen(double xMetres, double yMetres)
    {
        var (x, y) = (xMetres - XMetres, yMetres - YMetres);
        var metres = Math.Sqrt((x * x) + (y * y));
        return metres > 0 ? (metres, x / metres, y / metres) : (0, 1, 0);
    }

    /// <summary>What is measured less what it would be at a place.</summary>
    public double OffMetres(double xMetres, double yMetres) => Metres - Seen(xMetres, yMetres).Metres;
}
