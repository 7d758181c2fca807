using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>What a station gives when nothing is wrong: by its outlets, or by what the others here give.</summary>
internal sealed class StationFlows
{
    private readonly WaterCase owner;
    private readonly LearnedUsual flows;
    private readonly LearnedUsual pressures;

    public StationFlows(WaterCase owner)
    {
        this.owner = owner;
        var usual = owner.Water.Usual;
        flows = new LearnedUsual(Logs(WaterMeasure.MeterFlow), Amount.Of(usual.StationLitresPerMinute, "L/min").Base, usual.StationsDiffer);
        pressures = new LearnedUsual(Logs(WaterMeasure.OutletPressure), Amount.Of(usual.OutletKilopascals, "kPa").Base, usual.PressuresDiffer);
    }

    /// <param name="supply">The supply's state; null where it is in order.</param>
    public LogNormal Of(string station, SupplyState? supply = null) => Outlets(station) is { } flow
        ? new Amount(new LogNormal(flow, owner.Water.Usual.OutletsDiffer)).Times(supply?.AtStations(f => f.FlowFactor)).Base
        : flows.Of(station, supply?.AtStations(f => f.FlowFactor));

    /// <summary>Pressure at its outlets.</summary>
    public LogNormal PressureOf(string station, SupplyState? supply) => pressures.Of(station, supply?.AtStations(f => f.OutletPressureFactor));

    /// <summary>m3/s of all its outlets at their usual pressure; null where none are noted.</summary>
    public double? Outlets(string station)
    {
        var known = owner.View.Outlets.Values.Where(o => owner.View.Identity.Of(o.Station) == station).Select(OutletLaw.Of(owner.Water)).OfType<OutletLaw>().ToList();
        return known.Count > 0 ? known.Sum(o => o.Count * o.CubicMetresPerSecond) : null;
    }

    private Dictionary<string, double> Logs(WaterMeasure measure) => owner.Of(measure)
        .Where(r => r.Station is not null && r.Si > 0)
        .GroupBy(r => r.Station!)
        .ToDictionary(g => g.Key, g => Math.Log(g.Last().Si), StringComparer.Ordinal);
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
