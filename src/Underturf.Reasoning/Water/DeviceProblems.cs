using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>Notes of meters and backflow devices that nothing can be reckoned with.</summary>
internal static class DeviceProblems
{
    public static IEnumerable<Problem> Of(PropertyHistory history, PracticeBook book) => history.Now.WaterSupplies.SelectMany(s =>
        Pair(s.Key, "meter", s.Value.MeterAt, s.Value.MeterLoss)
            .Concat(Pair(s.Key, "backflow device", s.Value.BackflowAt, s.Value.BackflowLoss))
            .Concat(Meter(s.Key, s.Value, book.Water))
            .Concat(Backflow(s.Key, s.Value, book.Water))
            .Concat(Doubtful(s.Key, s.Value, history, book)));

    private static IEnumerable<Problem> Pair(string id, string device, Flow? at, Pressure? loss)
    {
        var place = Place(id, device);
        if ((at is null) != (loss is null))
        {
            yield return new Problem(place, at is null ? "is noted with what it loses, but not at what flow; that counts for nothing" : "is noted with a flow, but not with what it loses then; that counts for nothing", "Note the flow and the loss together, as its plate has them or as two gauges show them");
        }
        else if (at is { CubicMetresPerSecond: <= 0 } || loss is { Pascals: <= 0 })
        {
            yield return new Problem(place, "is noted with no flow or no loss; that counts for nothing", "Note a flow that runs through it and what it loses then");
        }
    }

    private static IEnumerable<Problem> Meter(string id, WaterSupplyFact supply, WaterPractice book)
    {
        if (supply is { Meter: { } size, MeterLoss: null, MeterAt: null } && book.MeterOf(size) is null)
        {
            yield return new Problem(Place(id, "meter"), "is of a size that the practice book does not know; what it loses counts as usual", $"Note a flow and its loss, or use one of: {string.Join(", ", book.Meters.Select(m => m.Name))} in", Severity.Notice);
        }
    }

    private static IEnumerable<Problem> Backflow(string id, WaterSupplyFact supply, WaterPractice book)
    {
        var place = Place(id, "backflow device");
        var isRead = supply.BackflowAt is not null || supply.BackflowLoss is not null;
        if (supply.BackflowKind is { } kind && book.Backflows.All(b => b.Name != kind))
        {
            yield return new Problem(place, $"is a '{kind}', which the practice book does not know", $"Use one of: {string.Join(", ", book.Backflows.Select(b => b.Name))}", Severity.Notice);
        }
        else if (!isRead && (supply.BackflowKind is null) != (supply.BackflowSize is not { Metres: > 0 }))
        {
            yield return new Problem(place, supply.BackflowKind is null ? "is noted with its size, but not with its kind; what it loses counts as usual" : "is noted with its kind, but not with its size; what it loses counts as usual", "Note both, or a flow through it and what it loses then", Severity.Notice);
        }
    }

    /// <summary>More than a street gives.</summary>
    private static IEnumerable<Problem> Doubtful(string id, WaterSupplyFact supply, PropertyHistory history, PracticeBook book)
    {
        var say = new WaterSay(history.Facts.UsesUsUnits);
        var (fluid, usual) = (new Networks.Hydraulics.Water(book.Wire.SoilKelvins), Units.From(book.Water.Usual.StationLitresPerMinute.Median, "L/min"));
        return new SupplyDevices(book.Water, fluid, supply, history.Facts.UsesUsUnits).Doubtful.Select(d => new Problem(
            Place(id, d.Name),
            $"would take {say.Pressure(d.Curve.LossMetres(usual) * fluid.PascalsPerMetre)} of {say.Flow(usual)} ({d.From}), so that next to nothing could run; that counts for nothing",
            "Look at the units of flow and loss, and note both again"));
    }

    private static string Place(string id, string device) => $"{device} of '{id}'";
}
