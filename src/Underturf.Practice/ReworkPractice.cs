namespace Underturf.Property.Practice;

/// <summary>A size of wire that is in stock.</summary>
/// <param name="MetrePrice">Of one metre of one conductor.</param>
public sealed record WireForSale(int Awg, decimal MetrePrice);

/// <summary>Signalling over two wires, in general: one base for a controller, one receiver for each valve.</summary>
public sealed record TwoWirePractice(string Source, decimal BasePrice, decimal BaseMinutes, decimal ValvePrice, decimal ValveMinutes);

/// <summary>
/// What it takes to give each valve of a shared station its own conductor. Minutes and prices are decimal: their sums are shown and must add up.
/// </summary>
/// <param name="Money">What prices are in.</param>
/// <param name="HourPrice">Of one hour of work.</param>
/// <param name="StationsTogether">How many stations of a controller may be on together.</param>
/// <param name="OpensAt">A valve is taken to open where its coil pulls in with at least this chance.</param>
/// <param name="FindMinutes">To pick one conductor out of a bundle.</param>
/// <param name="ProveMinutes">To prove a conductor from the controller to a place: its own ohms, apart from the others, a coil carried.</param>
/// <param name="LandMinutes">To put a conductor on a terminal and number it.</param>
/// <param name="PassesGood">Chance that a conductor proven to a place beyond can be used here, where its run passes.</param>
/// <param name="LooksGood">Chance that a conductor which only looks spare comes to a place and carries a coil there.</param>
/// <param name="ReclaimGood">The same of the conductor of a station that waters nothing.</param>
/// <param name="ConnectorPrice">Of one waterproof connector.</param>
/// <param name="Connectors">How many a valve takes that gets its own conductor.</param>
/// <param name="PullReadyMinutes">To get ready for a new cable, utility marks included.</param>
/// <param name="PullMetreMinutes">To lay one metre of it.</param>
/// <param name="Wires">Sizes in stock.</param>
/// <param name="DropMargin">Share of the volts that may be lost which sizing uses.</param>
/// <param name="KeptPrice">What a valve costs over the years that stays together with others: water, wear, and a station that cannot be set for it alone.</param>
public sealed record ReworkPractice(
    string Source,
    string Money,
    decimal HourPrice,
    int StationsTogether,
    double OpensAt,
    decimal FindMinutes,
    decimal ProveMinutes,
    decimal LandMinutes,
    double PassesGood,
    double LooksGood,
    double ReclaimGood,
    decimal ConnectorPrice,
    int Connectors,
    decimal PullReadyMinutes,
    decimal PullMetreMinutes,
    IReadOnlyList<WireForSale> Wires,
    double DropMargin,
    decimal KeptPrice,
    TwoWirePractice TwoWire);

/// <summary>What must hold between the numbers of a rework.</summary>
internal static class ReworkCheck
{
    public static IEnumerable<(bool Holds, string Place, string Reason)> Of(ReworkPractice rework)
    {
        foreach (var (place, value) in new (string, double)[]
        {
            ("opensAt", rework.OpensAt), ("passesGood", rework.PassesGood), ("looksGood", rework.LooksGood), ("reclaimGood", rework.ReclaimGood), ("dropMargin", rework.DropMargin),
        })
        {
            yield return (value is > 0 and < 1, $"rework.{place}", "must be a share between 0 and 1");
        }

        foreach (var (place, value) in new (string, decimal)[]
        {
            ("hourPrice", rework.HourPrice), ("findMinutes", rework.FindMinutes), ("proveMinutes", rework.ProveMinutes), ("landMinutes", rework.LandMinutes),
            ("connectorPrice", rework.ConnectorPrice), ("connectors", rework.Connectors), ("pullReadyMinutes", rework.PullReadyMinutes), ("pullMetreMinutes", rework.PullMetreMinutes),
            ("keptPrice", rework.KeptPrice), ("twoWire.basePrice", rework.TwoWire.BasePrice), ("twoWire.baseMinutes", rework.TwoWire.BaseMinutes),
            ("twoWire.valvePrice", rework.TwoWire.ValvePrice), ("twoWire.valveMinutes", rework.TwoWire.ValveMinutes),
        })
        {
            yield return (value >= 0, $"rework.{place}", "must not be below zero");
        }

        yield return (rework.StationsTogether >= 1, "rework.stationsTogether", "must be at least one");
        yield return (rework.Wires.Count > 0, "rework.wires", "must name at least one size");
        yield return (rework.Wires.Select(w => w.Awg).Distinct().Count() == rework.Wires.Count, "rework.wires", "has a size twice");
        foreach (var wire in rework.Wires)
        {
            yield return (wire is { Awg: >= 0 and <= 40, MetrePrice: >= 0 }, "rework.wires", "needs gauges from 0 to 40 and prices of zero or more");
        }
    }
}
