namespace Underturf.Numerics;

/// <summary>Places that run into each other, as where a thing lies on the line of its two marks: one place, whose spread no straight line describes.</summary>
internal static class RangePosterior
{
    /// <summary>Two places are one where the misfit half way between them is no more than this above theirs: one is then not e^4.5 = 90 times likelier than the way to the other.</summary>
    private const double MostBetween = 9;

    /// <summary>Standard deviations of the distance that the grid spans each way.</summary>
    private const double Reach = 5;

    private const int Rings = 41, Turns = 241;

    /// <summary>The grid is wide enough when its edge is this far below its middle.</summary>
    private const double EdgeShare = 1e-4;

    /// <summary>Minima that overlap as one, the others as they are.</summary>
    public static List<RangeFix> Joined(IReadOnlyList<RangeTo> ranges, List<RangeFix> minima)
    {
        var left = minima.OrderBy(place => place.Misfit).ToList();
        var joined = new List<RangeFix>();
        while (left.Count > 0)
        {
            var first = left[0];
            var mates = left.Where(other => ReferenceEquals(other, first) || Overlap(ranges, first, other)).ToList();
            left.RemoveAll(mates.Contains);
            joined.Add(mates.Count == 1 && IsSharp(ranges, first) ? first : Together(ranges, mates));
        }

        return joined;
    }

    private static bool Overlap(IReadOnlyList<RangeTo> ranges, RangeFix a, RangeFix b) =>
        RangeDescent.Misfit(ranges, (a.XMetres + b.XMetres) / 2, (a.YMetres + b.YMetres) / 2) - Math.Min(a.Misfit, b.Misfit) < MostBetween;

    /// <summary>So far across the line of the marks a thing can lie before a distance is a standard deviation off, by the bend of the circles.</summary>
    private static double Bent(IReadOnlyList<RangeTo> ranges, RangeFix place) =>
        ranges.Max(range => Math.Sqrt(2 * range.SpreadMetres * Math.Max(range.SpreadMetres, range.Seen(place.XMetres, place.YMetres).Metres)));

    /// <summary>Is the spread small beside the bend of the circles, so that a straight line describes it?</summary>
    private static bool IsSharp(IReadOnlyList<RangeTo> ranges, RangeFix place) =>
        double.IsFinite(place.Spread.Xx) && place.Spread.Ellipse(0.5).LongMetres < Bent(ranges, place);

    /// <summary>Mean and spread of the posterior, on a grid of rings and turns about the point of the sharpest distance.</summary>
    private static RangeFix Together(IReadOnlyList<RangeTo> ranges, List<RangeFix> mates)
    {
        var (middle, about) = (mates[0], ranges.MinBy(range => range.SpreadMetres));
        var (_, ux, uy) = about.Seen(mates.Average(m => m.XMetres), mates.Average(m => m.YMetres));

        // From where it fits best, not from what was measured: circles can miss each other by far.
        var centre = about with { Metres = about.Seen(middle.XMetres, middle.YMetres).Metres };
        var (turn, width) = (Math.Atan2(uy, ux), 0.1);
        foreach (var mate in mates)
        {
            var (_, x, y) = about.Seen(mate.XMetres, mate.YMetres);
            width = Math.Max(width, 1.5 * Math.Acos(Math.Clamp((x * ux) + (y * uy), -1, 1)));
        }

        var moments = Moments(ranges, centre, turn, width, middle.Misfit);
        while (moments.Edge > EdgeShare && width < Math.PI)
        {
            width = Math.Min(Math.PI, 1.6 * width);
            moments = Moments(ranges, centre, turn, width, middle.Misfit);
        }

        return new RangeFix(moments.X, moments.Y, moments.Spread, middle.Misfit, 0);
    }

    private static (double X, double Y, PlaneSpread Spread, double Edge) Moments(IReadOnlyList<RangeTo> ranges, RangeTo about, double turn, double width, double least)
    {
        var (sum, x, y, xx, xy, yy, edge, peak) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        for (var k = 0; k < Turns; k++)
        {
            var angle = turn + (width * ((2.0 * k / (Turns - 1)) - 1));
            for (var ring = 0; ring < Rings; ring++)
            {
                var metres = about.Metres + (about.SpreadMetres * Reach * ((2.0 * ring / (Rings - 1)) - 1));
                if (metres <= 0)
                {
                    continue;
                }

                var (dx, dy) = (metres * Math.Cos(angle), metres * Math.Sin(angle));
                var weight = metres * Math.Exp((least - RangeDescent.Misfit(ranges, about.XMetres + dx, about.YMetres + dy)) / 2);
                (sum, x, y, xx, xy, yy) = (sum + weight, x + (weight * dx), y + (weight * dy), xx + (weight * dx * dx), xy + (weight * dx * dy), yy + (weight * dy * dy));
                (edge, peak) = (k is 0 or Turns - 1 ? Math.Max(edge, weight) : edge, Math.Max(peak, weight));
            }
        }

        (x, y) = (x / sum, y / sum);
        return (about.XMetres + x, about.YMetres + y, new PlaneSpread((xx / sum) - (x * x), (xy / sum) - (x * y), (yy / sum) - (y * y)), edge / peak);
    }
}
