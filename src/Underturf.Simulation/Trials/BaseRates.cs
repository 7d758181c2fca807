using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation.Trials;

/// <summary>What the practice book's rates alone say of a station of which only is known that something is wrong with it.</summary>
internal sealed class BaseRates(PropertyView view, PracticeBook book)
{
    public Statement Of(StationPath path)
    {
        var seats = book.Faults.Where(f => !f.AsksNothing).SelectMany(f => Seats(f, path)).ToList();
        var total = seats.Sum(s => s.Rate);
        return Statements.Of(seats.Select(s => (s.Class, s.Rate / total)));
    }

    private IEnumerable<(RepairClass Class, double Rate)> Seats(FaultPractice fault, StationPath path)
    {
        var legs = path.Legs.Select(l => l.To).ToList();
        return fault.Scope switch
        {
            FaultScope.Conductor or FaultScope.Splice or FaultScope.CommonConductor or FaultScope.CommonSplice => legs.Select(to => (Class(fault, to), fault.Rate)),
            FaultScope.Branch or FaultScope.Pair => legs.Select(to => (Class(fault, to), fault.Rate / legs.Count)),
            FaultScope.Coil => path.Valves.Select(v => (Class(fault, v.Place), fault.Rate)),
            FaultScope.Station or FaultScope.Everywhere or FaultScope.Sensor or FaultScope.Supply => [(Class(fault, path.Controller), fault.Rate)],
            FaultScope.Unmodelled => [(RepairClass.Unknown, fault.Rate)],
            _ => [],
        };
    }

    private RepairClass Class(FaultPractice fault, string place) => new(fault.Repair, book.Repair(fault.Repair)!.Placed ? view.Name(place) : null);
}
