using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Simulation.Trials;

/// <summary>
/// The table that a technician carries in the head: ohms under 20 a short, over 60 open, between them sound wiring. Made into probabilities by
/// counting which repair was right in each row, over made-up properties of other seeds than those reported; places are all alike to it.
/// </summary>
public sealed class LimitTable
{
    private const double ShortOhms = 20, OpenOhms = 60;

    /// <summary>A repair that was never right in a row may be next time.</summary>
    private const double Unseen = 0.5;

    private readonly PracticeBook book;
    private readonly Dictionary<(int Row, string Repair), double> counts = [];
    private readonly IReadOnlyList<string> repairs;

    private LimitTable(PracticeBook book)
    {
        this.book = book;
        repairs = [.. book.Faults.Where(f => f.Scope != FaultScope.Note && f.Repair.Length > 0).Select(f => f.Repair).Distinct()];
    }

    /// <summary>Counts over the first visits of made-up properties.</summary>
    public static LimitTable Count(IEnumerable<World> worlds, PracticeBook book)
    {
        var table = new LimitTable(book);
        foreach (var world in worlds)
        {
            table.Add(world);
        }

        return table;
    }

    /// <param name="ohms">As first read at the controller.</param>
    internal Statement Of(StationPath path, Shown? ohms, PropertyView view)
    {
        var row = Row(ohms);
        var total = repairs.Sum(r => Weight(row, r));
        return Statements.Of(
            from repair in repairs
            let chance = Weight(row, repair) / total
            from place in book.Repair(repair)!.Placed ? path.Legs.Select(l => (string?)view.Name(l.To)) : [null]
            select (new RepairClass(repair, place), place is null ? chance : chance / path.Legs.Count));
    }

    private static int Row(Shown? ohms) => ohms is not { } shown ? 2 : shown.Value is not { } value || value.Si > OpenOhms ? 1 : value.Si < ShortOhms ? 0 : 2;

    private double Weight(int row, string repair) => Unseen + counts.GetValueOrDefault((row, repair));

    /// <summary>Each fault once, by the first of its stations.</summary>
    private void Add(World world)
    {
        var site = new TrialSite(world, 0);
        foreach (var fault in site.Truth.Faults)
        {
            var station = site.Truth.Paths.First(p => site.Truth.FaultsOf([p.Station]).Contains(fault)).Station;
            var key = (Row(site.FirstRead(station).GetValueOrDefault("station ohms")?.Value), site.Truth.Practice(fault).Repair);
            counts[key] = counts.GetValueOrDefault(key) + 1;
        }
    }
}
