using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Reasoning.Location;

/// <summary>A way of conductors in the ground on which something may lie.</summary>
/// <param name="Way">As it was drawn, or straight between its ends.</param>
/// <param name="Share">Chance that it lies on this one.</param>
/// <param name="ReachMetres">How far off the way it may lie at its ends.</param>
/// <param name="BowMetres">How much farther in the middle, where nobody knows the way.</param>
internal sealed record Stretch(GroundShape Way, double Share, double ReachMetres, double BowMetres)
{
    /// <summary>Beyond so many widths there is nothing.</summary>
    private const double Far = 5;

    /// <summary>
    /// Density at a point, in proportion: alike all along the way, falling off to its sides by exp(-d/w). A conductor that is longer than the straight
    /// line by a detour may bow out by half of its length times the root of the detour's square less one.
    /// </summary>
    public double At(Position at)
    {
        var (least, along, whole) = (double.MaxValue, 0.0, 0.0);
        foreach (var (from, to) in Way.Sides())
        {
            var (foot, length) = (GroundShape.Foot(from, to, at), from.DistanceMetresTo(to));
            if (foot.DistanceMetresTo(at) < least)
            {
                (least, along) = (foot.DistanceMetresTo(at), whole + from.DistanceMetresTo(foot));
            }

            whole += length;
        }

        var share = whole > 0 ? along / whole : 0;
        var width = ReachMetres + (BowMetres * 4 * share * (1 - share));
        return Math.Exp(-least / width) / width;
    }

    /// <summary>Chance of each cell, adding up to the shares of the stretches over their sum.</summary>
    public static double[] Prior(IReadOnlyList<Stretch> stretches, GroundCells cells, double anywhere)
    {
        var (prior, total) = (new double[cells.Count], stretches.Sum(s => s.Share));
        foreach (var stretch in stretches)
        {
            var row = new double[cells.Count];
            foreach (var cell in cells.Around(stretch.Way.Points, Far * (stretch.ReachMetres + stretch.BowMetres)))
            {
                row[cell] = stretch.At(cells.Middle(cell)) * cells.Area(cell);
            }

            var sum = row.Sum();
            Numerics.RowMath.AddTimes(prior, sum > 0 ? (1 - anywhere) * stretch.Share / total / sum : 0, row);
        }

        var left = 1 - prior.Sum();
        for (var cell = 0; cell < prior.Length; cell++)
        {
            prior[cell] += left * cells.Area(cell) / cells.AreaSquareMetres;
        }

        return prior;
    }
}
