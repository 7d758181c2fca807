using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>How much likelier what was seen with everything off makes it that water runs somewhere.</summary>
internal sealed class LeakSigns(WaterCase owner)
{
    private readonly List<WaterWatch> idle = [.. owner.Watches.Where(w => w.Station is null)];

    /// <summary>What was seen of one station is weighed with that station's states (<see cref="StationWater"/>): its own valve explains it, or they do.</summary>
    public double OfValve(WaterFault fault, Position? at) => Factor(fault, w =>
        w.About is null && (w.Where.Count == 0 || (at is { } here && w.Where.Any(p => p.DistanceMetresTo(here) <= owner.Water.WetMetres))));

    /// <param name="piece">Null where no pipes are noted.</param>
    public double OfPiece(WaterFault fault, MainPiece? piece) => Factor(fault, w =>
        w.About is null && (w.Where.Count == 0 || piece is null || w.Where.Any(p => Shapes(owner.View, piece).Any(s => s.DistanceMetresTo(p) <= owner.Water.WetMetres))));

    private double Factor(WaterFault fault, Func<WaterWatch, bool> concerns) => idle.Where(concerns).Aggregate(1.0, (product, watch) => product * Factor(fault, watch));

    private double Factor(WaterFault fault, WaterWatch watch)
    {
        var product = 1.0;
        foreach (var sight in owner.Water.Sights.Where(s => fault.Seen.ContainsKey(s.Name)))
        {
            var chance = 1 - ((1 - fault.Seen[sight.Name]) * (1 - sight.Imagined));
            product *= watch.Seen.Contains(sight.Name) ? chance / sight.Imagined : (1 - chance) / (1 - sight.Imagined);
        }

        return product;
    }

    public static IEnumerable<GroundShape> Shapes(PropertyView view, MainPiece piece)
    {
        foreach (var pipe in piece.Pipes.Select(p => view.Pipes[p]))
        {
            Position[] points = pipe.Route.Count > 0 ? [.. pipe.Route] : [.. new[] { view.PositionOf(pipe.From), view.PositionOf(pipe.To) }.OfType<Position>()];
            if (points.Length > 0)
            {
                yield return GroundShape.Line(points);
            }
        }
    }
}
