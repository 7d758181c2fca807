using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>Which positions belong to the property: one typed with a slipped decimal point must not shrink all others to a dot.</summary>
public sealed record Nearness(Position Middle, double LimitMetres)
{
    private const double LeastLimitMetres = 2000, LargestMetres = 1e6;

    /// <summary>How many times the median distance from the middle still counts as near.</summary>
    private const double Times = 10;

    /// <param name="leastMetres">Nearer than this to the middle is near in any case.</param>
    public static Nearness Of(IEnumerable<Position> positions, double leastMetres = LeastLimitMetres)
    {
        var sane = positions.Where(IsSane).ToList();
        if (sane.Count == 0)
        {
            return new Nearness(default, leastMetres);
        }

        var middle = new Position(Median(sane.Select(p => p.EastMetres)), Median(sane.Select(p => p.NorthMetres)));
        return new Nearness(middle, Math.Max(leastMetres, Times * Median(sane.Select(p => p.DistanceMetresTo(middle)))));
    }

    public bool Holds(Position position) => IsSane(position) && position.DistanceMetresTo(Middle) <= LimitMetres;

    private static bool IsSane(Position p) => Math.Abs(p.EastMetres) <= LargestMetres && Math.Abs(p.NorthMetres) <= LargestMetres;

    private static double Median(IEnumerable<double> numbers)
    {
        var sorted = numbers.Order().ToList();
        return sorted[(sorted.Count - 1) / 2];
    }
}
