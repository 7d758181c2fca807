namespace Underturf.Numerics;

/// <summary>Spread of a place in the plane: variances and covariance, square metres.</summary>
public readonly record struct PlaneSpread(double Xx, double Xy, double Yy)
{
    public double Determinant => (Xx * Yy) - (Xy * Xy);

    /// <summary>From what the measurements tell, the inverse of the covariance; without end where they leave a direction open.</summary>
    public static PlaneSpread OfInformation(double xx, double xy, double yy)
    {
        var determinant = (xx * yy) - (xy * xy);
        return determinant > 0 ? new PlaneSpread(yy / determinant, -xy / determinant, xx / determinant) : new PlaneSpread(double.PositiveInfinity, 0, double.PositiveInfinity);
    }

    public PlaneSpread Scaled(double factor) => new(Xx * factor, Xy * factor, Yy * factor);

    /// <summary>Variance along a direction given as a unit vector.</summary>
    public double Along(double x, double y) => (x * x * Xx) + (2 * x * y * Xy) + (y * y * Yy);

    /// <summary>The ellipse that holds such a share of a normal distribution.</summary>
    public SpreadEllipse Ellipse(double share)
    {
        var (middle, half) = ((Xx + Yy) / 2, Math.Sqrt(((Xx - Yy) * (Xx - Yy) / 4) + (Xy * Xy)));
        var times = Math.Sqrt(-2 * LogMath.LogOnePlus(-share));
        return new SpreadEllipse(times * Math.Sqrt(middle + half), times * Math.Sqrt(Math.Max(0, middle - half)), Math.Atan2(2 * Xy, Xx - Yy) / 2);
    }
}

/// <summary>An ellipse about a place.</summary>
/// <param name="LongMetres">Its longer half axis.</param>
/// <param name="ShortMetres">Its shorter one.</param>
/// <param name="TurnRadians">Direction of the longer one, from the x axis against the clock.</param>
public readonly record struct SpreadEllipse(double LongMetres, double ShortMetres, double TurnRadians)
{
    /// <summary>A point of its edge, by a running angle.</summary>
    public (double XMetres, double YMetres) Edge(double radians)
    {
        var (along, across) = (LongMetres * Math.Cos(radians), ShortMetres * Math.Sin(radians));
        var (cos, sin) = (Math.Cos(TurnRadians), Math.Sin(TurnRadians));
        return ((along * cos) - (across * sin), (along * sin) + (across * cos));
    }
}
