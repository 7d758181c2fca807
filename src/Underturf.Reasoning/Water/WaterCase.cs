using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>What the log says of water, and what bears on it.</summary>
internal sealed class WaterCase
{
    private readonly ILookup<string, Observed<WorkFact>> works;
    private readonly Lazy<HeldBack> held;

    public WaterCase(PropertyHistory history, PracticeBook book)
    {
        (History, Book) = (history, book);
        Graph = new WaterGraph(View);
        Heights = new PipeHeights(View, book.Water);
        var finder = new WaterNoteFinder(this);
        var readings = finder.Readings();
        Conflicts = new WaterConflicts(this, readings).Find();
        Readings = [.. readings.Except(Conflicts.SelectMany(c => c.LeavesOut))];
        LeftOut = [.. finder.LeftOut, .. Conflicts.Select(c => $"{c.Why}; {c.Follows} until it is read again")];
        Drainage = new DrainageFinder(this);
        held = new Lazy<HeldBack>(() => new HeldBack(this));
        works = history.Facts.Works.ToLookup(w => w.Fact.Did, StringComparer.Ordinal);
        Watches = [.. finder.Watches().Select(new LowEnds(this).Of)];
        Problems = [.. finder.Problems, .. Conflicts.Select(Told), .. WaterProblems.Of(history, book), .. Heights.Problems()];
    }

    public PropertyHistory History { get; }

    public PropertyView View => History.Now;

    public PracticeBook Book { get; }

    public WaterPractice Water => Book.Water;

    public WaterGraph Graph { get; }

    /// <summary>What runs out of laterals once their valves shut.</summary>
    public DrainageFinder Drainage { get; }

    /// <summary>Where the meter is read: the point of connection, or the controller where none is noted.</summary>
    public string MeterPlace => View.WaterSupplies.Keys.FirstOrDefault() ?? View.Controllers.Keys.FirstOrDefault() ?? string.Empty;

    /// <summary>What is noted of the meter and the backflow device of a point of connection.</summary>
    public SupplyDevices DevicesOf(string supply) => new(Water, Fluid, View.WaterSupplies.GetValueOrDefault(supply), History.Facts.UsesUsUnits);

    /// <summary>As warm as the soil.</summary>
    public Networks.Hydraulics.Water Fluid => new(Book.Wire.SoilKelvins);

    /// <summary>How high things are, as far as that was noted and can be.</summary>
    public PipeHeights Heights { get; }

    /// <summary>Those that count: none that cannot be right beside others, and none beyond what is weighed.</summary>
    public IReadOnlyList<WaterReading> Readings { get; }

    /// <summary>Notes that cannot all be right.</summary>
    public IReadOnlyList<WaterConflict> Conflicts { get; }

    /// <summary>What was read and counts for nothing, in words.</summary>
    public IReadOnlyList<string> LeftOut { get; }

    public IReadOnlyList<WaterWatch> Watches { get; }

    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>How likely isolation valves hold; worked out once for all places that are made dry.</summary>
    public HeldBack Held => held.Value;

    /// <summary>Whether anything was read or seen of the water.</summary>
    public bool IsNoted => Readings.Count + Watches.Count + Conflicts.Count > 0;

    /// <summary>What cans caught last on a station as it is now; nothing where none were set out since it was mended or made anew.</summary>
    public CaughtWater? CaughtOn(string station) =>
        History.Facts.Catches.Where(c => View.Identity.Of(c.Fact.Station) == station && IsAsNow(station, c.Moment) && !IsMendedSince(station, c.Moment)).MaxBy(c => c.Moment) is { } cans ? CaughtWater.Of(cans.Fact) : null;

    /// <summary>Whether a station ran the same valves at a moment as it does now: what was read of it before a valve came or went says nothing of it.</summary>
    public bool IsAsNow(string station, Moment moment) =>
        ValvesAt(station, History.At(moment)).SetEquals(ValvesAt(station, View))
        && !History.Facts.Renumbered.Any(r => r.Moment > moment && View.Identity.Of(r.Fact.Station) != View.Identity.Of(r.Fact.From) && (View.Identity.Of(r.Fact.Station) == station || View.Identity.Of(r.Fact.From) == station));

    /// <summary>A station and its valves: what work on it names.</summary>
    public string[] ThingsOf(string station) => [station, .. View.ValvesOf(station).Select(v => v.Id)];

    private HashSet<string> ValvesAt(string station, PropertyView view) => [.. view.ValvesOf(station).Select(v => View.Identity.Of(v.Id))];

    /// <summary>Any work since that ends a fault of how a station waters.</summary>
    private bool IsMendedSince(string station, Moment moment)
    {
        var things = ThingsOf(station);
        return Water.Of(WaterScope.Station).Any(f => works[f.Repair].Any(w => w.Moment > moment && Concerns(w.Fact, things)));
    }

    /// <summary>Whether anything was read or seen of a station.</summary>
    public bool IsNotedOf(string station) => Readings.Any(r => r.Running.Contains(station)) || Watches.Any(w => (w.Station ?? w.About) == station);

    public IEnumerable<WaterReading> Of(WaterMeasure measures) => Readings.Where(r => r.Probe.Measures == measures);

    /// <summary>Whether work up to a moment has cured a fault of one of these things; work that names nothing cures what is named by none.</summary>
    public bool IsCured(WaterFault fault, IReadOnlyCollection<string> things, Moment moment) =>
        works[fault.Repair].Any(w => w.Moment <= moment && Concerns(w.Fact, things));

    /// <summary>All that water comes in at; where no point of connection is noted, what stands for it.</summary>
    public IReadOnlyList<string> Supplies => View.WaterSupplies.Count > 0 ? [.. View.WaterSupplies.Keys] : [MeterPlace];

    /// <summary>Isolation valves and valves that stand shut by hand at a moment, by what the last note before said of each.</summary>
    public HashSet<string> ShutAt(Moment moment) => [.. History.Facts.Settings
        .Where(s => s.Moment <= moment)
        .GroupBy(s => View.Identity.Of(s.Fact.Of))
        .Where(g => (View.IsolationValves.ContainsKey(g.Key) || View.Valves.ContainsKey(g.Key)) && g.MaxBy(s => s.Moment)!.Fact.State == "shut")
        .Select(g => g.Key)];

    /// <summary>An isolation valve, and what somebody said lies behind it, further isolation valves with what is behind those.</summary>
    public HashSet<string> ToldBehind(string isolation) => IsolationRings.Behind(View, isolation);

    /// <summary>Whether a thing lies behind an isolation valve, as somebody has said; nothing where nobody has.</summary>
    public bool? LiesBehind(string isolation, IReadOnlyCollection<string> things)
    {
        var seen = ToldBehind(isolation);
        return things.Any(seen.Contains) ? true : seen.Count > 1 && things.Count > 0 ? false : null;
    }

    /// <summary>Stations behind it, named themselves or by one of their valves.</summary>
    public List<string> ToldStationsBehind(string isolation)
    {
        var behind = ToldBehind(isolation);
        return [.. View.Stations.Keys.Where(s => behind.Contains(s) || View.ValvesOf(s).Any(v => behind.Contains(v.Id)))];
    }

    /// <summary>Points of connection that somebody left shut.</summary>
    public IEnumerable<string> OffAtSupply() => History.Facts.LeftAs
        .GroupBy(l => View.Identity.Of(l.Fact.Place))
        .Where(g => View.WaterSupplies.ContainsKey(g.Key) && g.MaxBy(l => l.Moment)!.Fact.State == RunningWater.SupplyOff)
        .Select(g => g.Key);

    private static Problem Told(WaterConflict conflict) =>
        new(conflict.Reading.Moment.Entry.ToString(), $"{conflict.Why}; {conflict.Follows}", conflict.Other is null ? "Look how it stands and note it, then read again" : "Read both once more, and strike the one that was wrong", Severity.Notice);

    private bool Concerns(WorkFact work, IReadOnlyCollection<string> things) => work.Target is { } target
        ? things.Contains(View.Identity.Of(target))
        : work.Place is { } place ? things.Contains(View.Identity.Of(place)) : things.Count == 0;
}
