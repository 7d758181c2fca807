using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>What a station gives when nothing is wrong: by its outlets, or by what the others here give.</summary>
internal sealed class StationFlows
{
    private readonly WaterCase owner;
    private readonly Dictionary<string, double> logs;

    public StationFlows(WaterCase owner)
    {
        this.owner = owner;
        logs = owner.Of(WaterMeasure.MeterFlow)
            .Where(r => r.Station is not null && r.Si > 0)
            .GroupBy(r => r.Station!)
            .ToDictionary(g => g.Key, g => Math.Log(g.Last().Si), StringComparer.Ordinal);
    }

    public LogNormal Of(string station) => Outlets(station) is { } flow ? new LogNormal(flow, owner.Water.Usual.OutletsDiffer) : Beside(station);

    /// <summary>m3/s of all its outlets at their usual pressure; null where none are noted.</summary>
    public double? Outlets(string station)
    {
        var known = owner.View.Outlets.Values.Where(o => owner.View.Identity.Of(o.Station) == station).Select(OutletLaw.Of(owner.Water)).OfType<OutletLaw>().ToList();
        return known.Count > 0 ? known.Sum(o => o.Count * o.CubicMetresPerSecond) : null;
    }

    /// <summary>A normal mean with a normal prior, learned from the other stations, and a station's own difference from it.</summary>
    private LogNormal Beside(string station)
    {
        var usual = owner.Water.Usual;
        var (prior, differ) = (1 / (usual.StationLitresPerMinute.LogSpread * usual.StationLitresPerMinute.LogSpread), usual.StationsDiffer * usual.StationsDiffer);
        var others = logs.Where(l => l.Key != station).Select(l => l.Value).ToList();
        var precision = prior + (others.Count / differ);
        var mean = ((prior * Math.Log(Units.From(usual.StationLitresPerMinute.Median, "L/min"))) + (others.Sum() / differ)) / precision;
        return new LogNormal(Math.Exp(mean), Math.Sqrt((1 / precision) + differ));
    }
}

/// <summary>What outlets of one kind give.</summary>
/// <param name="CubicMetresPerSecond">One of them, at <paramref name="Pascals"/>.</param>
internal sealed record OutletLaw(int Count, double CubicMetresPerSecond, double Pascals, double Exponent, bool Compensates)
{
    /// <summary>As noted, or as the practice book has it; null where neither tells.</summary>
    public static Func<FieldLog.OutletFact, OutletLaw?> Of(WaterPractice book) => fact =>
    {
        var known = book.Outlets.FirstOrDefault(o => o.Name == fact.What);
        if (fact.Flow is null && known is null)
        {
            return null;
        }

        var flow = fact.Flow?.CubicMetresPerSecond ?? Units.From(known!.LitresPerMinute, "L/min");
        var usual = known ?? book.Outlets[0];
        return flow > 0 ? new OutletLaw(fact.Count, flow, fact.Pressure is { Pascals: > 0 } at ? at.Pascals : Units.From(usual.Kilopascals, "kPa"), usual.Exponent, usual.Compensates) : null;
    };
}
