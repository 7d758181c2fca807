using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>
/// More pressure than usual at a station's outlets comes only from a street that gives more than usual, and of something that held it down and no longer does:
/// builders fit that where much comes in. Whether they did is one unknown of the property, and the pressures at the point of connection tell of it.
/// </summary>
internal sealed class HeldDown(WaterPractice book, SupplyWater supply)
{
    /// <summary>Of two who build alike, one fits a regulator at the usual pressure.</summary>
    private const double AtUsual = 0.5;

    private readonly double times = supply.Readings.Count == 0 ? 1 : Fitted(book, supply.Built()) / AtUsual;

    /// <summary>Chance beforehand that a station has the fault.</summary>
    public double Rate(WaterFault fault, double rate) => fault is { Scope: WaterScope.Station, OutletPressureFactor.Median: > 1 } ? Math.Min(0.5, rate * times) : rate;

    private static double Fitted(WaterPractice book, LogNormal built) =>
        Normal.Cdf(Math.Log(built.Median / Units.From(book.Usual.StaticKilopascals.Median, "kPa")) / double.Hypot(book.Usual.PressuresDiffer, built.LogSpread));
}
