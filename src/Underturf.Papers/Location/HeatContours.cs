using Underturf.FieldLog;
using Underturf.Numerics;
using Underturf.Reasoning;

namespace Underturf.Papers;

/// <summary>Outlines of the ground that holds a thing with each probability, in metres.</summary>
internal static class HeatContours
{
    /// <summary>The widest ground first.</summary>
    public static IEnumerable<(double Probability, IReadOnlyList<IReadOnlyList<Position>> Rings)> Of(HeatMap heat) =>
        heat.Limits.Where(l => l.Share > 0).OrderByDescending(l => l.Probability).Select(limit => (limit.Probability, Rings(heat, limit.Share)));

    /// <summary>The cell of least share belongs to the ground too: the line runs just below it.</summary>
    private static IReadOnlyList<IReadOnlyList<Position>> Rings(HeatMap heat, double share) =>
        [.. ContourRings.Of(heat.Shares, heat.Wide, share * (1 - 1e-9)).Select(ring => ring.Select(p => At(heat, p)).ToList())];

    private static Position At(HeatMap heat, (double X, double Y) p) =>
        new(heat.Corner.EastMetres + ((p.X + 0.5) * heat.SideMetres), heat.Corner.NorthMetres + ((p.Y + 0.5) * heat.SideMetres));
}
