using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>
/// What the heights of a station say of faults that drain its lateral: how likely they are beforehand, and how well what runs out is seen, and where. Where heights
/// are noted of a part of its outlets, the lowest may be another, so that they only speak for it.
/// </summary>
internal sealed class LowHead
{
    private readonly WaterPractice book;
    private readonly IReadOnlyList<LateralDrainage> laterals;
    private readonly bool complete;
    private readonly List<FieldLog.Position> low = [];
    private readonly double shareNear;

    public LowHead(WaterCase owner, string station)
    {
        book = owner.Water;
        laterals = owner.Drainage.Of(station);
        var (valves, all) = (owner.View.ValvesOf(station).Count(), owner.View.Outlets.Where(o => owner.View.Identity.Of(o.Value.Station) == station).ToList());
        complete = laterals.Count == Math.Max(1, valves) && laterals.All(l => l.WithoutHeight == 0) && (valves < 2 || all.All(o => o.Value.Fitting is not null));
        if (complete)
        {
            var outlets = all.Where(o => o.Value.Fitting is not null).Select(o => (o.Key, At: owner.View.PositionOf(o.Value.Fitting!), o.Value.Count)).Where(o => o.At is not null).ToList();
            low = [.. outlets.Where(o => laterals.Any(l => l.Low.Any(w => w.Id == o.Key))).Select(o => o.At!.Value)];
            shareNear = outlets.Count == 0 ? 0 : Math.Clamp((double)outlets.Where(o => IsNear(o.At!.Value)).Sum(o => o.Count) / outlets.Sum(o => o.Count), 0.05, 0.95);
        }
    }

    private LowHeadPractice Book => book.LowHead;

    private double HeadMetres => laterals.Max(l => l.HeadMetres);

    private double Litres => laterals.Sum(l => l.LeastCubicMetres + l.MostCubicMetres) / 2 * 1000;

    /// <summary>Chance beforehand that the station has a fault: of one that drains it, that its outlets are without check valves and enough stands over the lowest.</summary>
    public double Rate(WaterFault fault)
    {
        if (!fault.Drains || laterals.Count == 0)
        {
            return fault.Rate;
        }

        var byHeight = Book.WithoutChecks * Normal.Cdf((HeadMetres - Book.RestMetres) / (Math.Sqrt(2) * Book.HeightsDifferMetres));
        return complete ? Math.Max(byHeight, Least) : Math.Max(byHeight, fault.Rate);
    }

    /// <summary>Chance that a fault shows a sight, and shows it there where it was seen.</summary>
    public double Seen(WaterFault fault, string sight, WaterWatch watch, bool seen) => Chance(fault, fault.Seen.GetValueOrDefault(sight)) * (seen ? There(watch, fault.Drains || fault.Scope == WaterScope.Valve) : 1);

    /// <summary>The same for what is imagined.</summary>
    public double Imagined(WaterSight sight, WaterWatch watch, bool seen) => sight.Imagined * (seen ? There(watch, atLow: false) : 1);

    /// <summary>The book's chance holds where as much runs out as it has as usual; of more, more is seen, as of several times at once.</summary>
    private double Chance(WaterFault fault, double chance)
    {
        if (!fault.Drains || laterals.Count == 0 || chance <= 0)
        {
            return chance;
        }

        var byWater = 1 - Math.Pow(1 - chance, Litres / Book.UsualLitres);
        return complete ? byWater : Math.Max(byWater, chance);
    }

    /// <summary>Chance that something shows at the low end, or elsewhere, as it was seen; one where nobody said where that was.</summary>
    private double There(WaterWatch watch, bool atLow)
    {
        if (watch.Where.Count == 0 || low.Count == 0)
        {
            return 1;
        }

        var near = atLow ? 1 - Least : shareNear;
        return watch.Where.Any(IsNear) ? near : 1 - near;
    }

    private bool IsNear(FieldLog.Position at) => low.Any(l => l.DistanceMetresTo(at) <= book.WetMetres);

    /// <summary>A chance that stands in for none.</summary>
    private const double Least = 1e-3;
}
