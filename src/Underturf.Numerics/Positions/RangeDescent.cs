namespace Underturf.Numerics;

/// <summary>Least squares of distances in the plane.</summary>
internal static class RangeDescent
{
    private const int MostSteps = 60;

    /// <summary>Places closer than this are one.</summary>
    private const double SameMetres = 1e-4;

    public static List<RangeFix> Minima(IReadOnlyList<RangeTo> ranges)
    {
        var minima = new List<RangeFix>();
        for (var i = 0; i < ranges.Count; i++)
        {
            for (var j = i + 1; j < ranges.Count; j++)
            {
                foreach (var (x, y) in Crossings(ranges[i], ranges[j]))
                {
                    var found = Descend(ranges, x, y);
                    if (!minima.Any(other => Math.Abs(other.XMetres - found.XMetres) + Math.Abs(other.YMetres - found.YMetres) < SameMetres))
                    {
                        minima.Add(found);
                    }
                }
            }
        }

        return minima;
    }

    public static double Misfit(IReadOnlyList<RangeTo> ranges, double x, double y)
    {
        var sum = 0.0;
        foreach (var range in ranges)
        {
            var off = range.OffMetres(x, y) / range.SpreadMetres;
            sum += off * off;
        }

        return sum;
    }

    /// <summary>The inverse of what the distances tell about a place, their directions taken from it.</summary>
    public static PlaneSpread Spread(IEnumerable<RangeTo> ranges, double x, double y)
    {
        var (xx, xy, yy) = (0.0, 0.0, 0.0);
        foreach (var range in ranges)
        {
            var (_, ux, uy) = range.Seen(x, y);
            var weight = 1 / (range.SpreadMetres * range.SpreadMetres);
            (xx, xy, yy) = (xx + (weight * ux * ux), xy + (weight * ux * uy), yy + (weight * uy * uy));
        }

        return PlaneSpread.OfInformation(xx, xy, yy);
    }

    /// <summary>Where two circles cross; where they do not, a point on either side of where they come nearest.</summary>
    private static (double X, double Y)[] Crossings(RangeTo a, RangeTo b)
    {
        var (apart, ux, uy) = a.Seen(b.XMetres, b.YMetres);
        if (apart == 0)
        {
            return [(a.XMetres + a.Metres, a.YMetres), (a.XMetres - a.Metres, a.YMetres)];
        }

        const double Aside = 0.05;
        var along = ((a.Metres * a.Metres) - (b.Metres * b.Metres) + (apart * apart)) / (2 * apart);
        var square = (a.Metres * a.Metres) - (along * along);
        var across = square > 0 ? Math.Sqrt(square) : Aside * Math.Min(a.Metres, b.Metres);
        along = square > 0 ? along : along > 0 ? a.Metres : -a.Metres;
        var (x, y) = (a.XMetres + (along * ux), a.YMetres + (along * uy));
        return [(x - (across * uy), y + (across * ux)), (x + (across * uy), y - (across * ux))];
    }

    /// <summary>Levenberg's method: Gauss and Newton's step, held back until it lessens the misfit.</summary>
    private static RangeFix Descend(IReadOnlyList<RangeTo> ranges, double x, double y)
    {
        var (misfit, held) = (Misfit(ranges, x, y), 1e-6);
        for (var step = 0; step < MostSteps; step++)
        {
            var (dx, dy) = Step(ranges, x, y, held);
            if (Misfit(ranges, x + dx, y + dy) is var now && now <= misfit)
            {
                (x, y, misfit, held) = (x + dx, y + dy, now, held / 10);
                if (Math.Abs(dx) + Math.Abs(dy) < SameMetres * SameMetres)
                {
                    break;
                }
            }
            else
            {
                held *= 10;
            }
        }

        return new RangeFix(x, y, Spread(ranges, x, y), misfit, 0);
    }

    private static (double X, double Y) Step(IReadOnlyList<RangeTo> ranges, double x, double y, double held)
    {
        var (xx, xy, yy, gx, gy) = (0.0, 0.0, 0.0, 0.0, 0.0);
        foreach (var range in ranges)
        {
            var (metres, ux, uy) = range.Seen(x, y);
            var weight = 1 / (range.SpreadMetres * range.SpreadMetres);
            (xx, xy, yy) = (xx + (weight * ux * ux), xy + (weight * ux * uy), yy + (weight * uy * uy));
            (gx, gy) = (gx + (weight * ux * (range.Metres - metres)), gy + (weight * uy * (range.Metres - metres)));
        }

        var damp = held * (xx + yy);
        (xx, yy) = (xx + damp, yy + damp);
        var determinant = (xx * yy) - (xy * xy);
        return (((yy * gx) - (xy * gy)) / determinant, ((xx * gy) - (xy * gx)) / determinant);
    }
}
