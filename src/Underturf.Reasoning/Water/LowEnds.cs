using Underturf.FieldLog;

namespace Underturf.Reasoning.Water;

/// <summary>
/// Whose low end a wet place is that somebody noted by its position alone, with everything off: that of the nearest station whose lateral runs out there, where no
/// mainline and no valve that is noted lies as near.
/// </summary>
internal sealed class LowEnds(WaterCase owner)
{
    private readonly Lazy<IReadOnlyList<(string Station, Position At)>> ends = new(() =>
    [
        .. from station in owner.View.Stations.Keys
           from lateral in owner.Drainage.Of(station)
           from low in lateral.Low
           let outlet = owner.View.Outlets[low.Id]
           where outlet.Fitting is not null
           let at = owner.View.PositionOf(outlet.Fitting!)
           where at is not null
           select (station, at.Value),
    ]);

    private double Reach => owner.Water.WetMetres;

    /// <summary>The same, of the station whose low end it is at.</summary>
    public WaterWatch Of(WaterWatch watch) => watch.Station is null && watch.About is null && watch.Where.Count > 0 && StationAt(watch.Where) is { } station ? watch with { About = station } : watch;

    private string? StationAt(IReadOnlyList<Position> where)
    {
        var near = ends.Value.Where(e => where.All(w => w.DistanceMetresTo(e.At) <= Reach)).OrderBy(e => where.Max(w => w.DistanceMetresTo(e.At))).Select(e => e.Station).FirstOrDefault();
        return near is null || where.Any(w => IsMainNear(w) || IsValveNear(w)) ? null : near;
    }

    private bool IsMainNear(Position at) => owner.Graph.Pieces.SelectMany(p => LeakSigns.Shapes(owner.View, p)).Any(s => s.DistanceMetresTo(at) <= Reach);

    private bool IsValveNear(Position at) => owner.View.Valves.Keys.Any(v => owner.View.PositionOf(v) is { } there && there.DistanceMetresTo(at) <= Reach);
}
