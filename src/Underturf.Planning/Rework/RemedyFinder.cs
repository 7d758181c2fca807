using Underturf.FieldLog;
using Underturf.Networks.Wiring;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Planning.Rework;

/// <summary>What can be done for a valve that shares a conductor, each with its minutes, its price, its chance and the volts that it brings.</summary>
internal sealed class RemedyFinder(Site site)
{
    /// <summary>Names the station to be, in what is foreseen of it.</summary>
    public const string NewStation = "the new station";

    private readonly ReworkPractice numbers = site.Numbers;
    private readonly Foresight foresight = new(site.Notebook);
    private readonly Dictionary<(string, int, string), Foreseen?> seen = [];

    public IReadOnlyList<Remedy> Find(Need need)
    {
        var keep = Keep(need);
        var pull = Pull(need);
        var fallback = Math.Min(keep.Told.Expected, pull.Told.IsPossible ? pull.Told.Expected : decimal.MaxValue);
        IEnumerable<Remedy> found = need.PartsAtController
            ? [Own(need)]
            : [.. site.Spares.Where(s => s.Controller == need.Controller).SelectMany(s => Spare(need, s, fallback)), .. site.Abandoned.Where(a => site.Notebook.Paths[a].Controller == need.Controller).Select(a => Reclaim(need, a, fallback)), pull];
        return [.. found.Append(keep).Append(TwoWire(need))];
    }

    private Remedy Own(Need need) => new(Told(RemedyKind.OwnConductor, "put its own conductor on a terminal of its own", [Land(), .. Check()], 0, 1, 0, See(need, "own", l => l)));

    private IEnumerable<Remedy> Spare(Need need, SpareWire spare, decimal fallback)
    {
        var isHere = spare.Place == need.Joint;
        var proven = (spare.IsProven && isHere) || site.Tried(spare.Wire, ReworkDeeds.Proven, need.Joint);
        var passes = spare.IsProven && spare.Place is { } end && Passes(need, end);
        var chance = proven ? 1 : passes ? numbers.PassesGood : numbers.LooksGood;
        var landed = site.LandedOn(spare.Wire);
        var size = site.View.Ends.TryGetValue(spare.Wire, out var noted) ? noted.Gauge : null;
        Leg On(Leg l) => l with { StationSize = size ?? l.StationSize };
        var work = Work(need, landed is not null);
        var how = proven ? string.Empty : passes ? $", proven to {site.View.Name(spare.Place!)} and passing here" : ", which only looks spare";
        var told = Told(RemedyKind.Spare, $"use {spare.Name}{how}", work, proven ? 0 : numbers.FindMinutes + numbers.ProveMinutes, chance, fallback, See(need, size?.ToString() ?? "as run", On));
        yield return new Remedy(told, spare.Wire, Terminal: landed, Proves: !proven);
        if (told.IsPossible || site.Spares.FirstOrDefault(s => s.Wire != spare.Wire && s.Controller == need.Controller) is not { } second)
        {
            yield break;
        }

        var usual = WireSize.FromAwg(site.Book.Wire.StationAwg);
        var both = Told(
            RemedyKind.SpareAndCommon,
            $"use {spare.Name}{how}, and {second.Name} beside the common",
            [.. work, CostLine.Of("join the second conductor to the common at both ends", numbers.LandMinutes + Repair(site.Book.Faults.FirstOrDefault(f => f.Scope == FaultScope.CommonSplice)?.Repair ?? string.Empty), numbers.HourPrice, 2 * numbers.ConnectorPrice)],
            (proven ? 0 : numbers.FindMinutes + numbers.ProveMinutes) + numbers.FindMinutes + numbers.ProveMinutes,
            chance * numbers.LooksGood,
            fallback,
            See(need, $"{size} and common", l => On(l) with { CommonSize = Wires.Together(l.CommonSize, usual) }));
        yield return new Remedy(both, spare.Wire, second.Wire, landed, !proven);
    }

    private Remedy Reclaim(Need need, string station, decimal fallback)
    {
        var proven = site.Tried(station, ReworkDeeds.Proven, need.Joint);
        var told = Told(RemedyKind.Reclaim, $"reclaim station {site.View.StationNumber(station)}, which waters nothing", Work(need, true), proven ? 0 : numbers.FindMinutes + numbers.ProveMinutes, proven ? 1 : numbers.ReclaimGood, fallback, See(need, "as run", l => l));
        return new Remedy(told, station, Terminal: site.View.Stations[station].Terminal, Proves: !proven);
    }

    /// <summary>The thinnest size in stock that loses no more than the margin allows, by the scalar rule of the handbooks.</summary>
    private Remedy Pull(Need need)
    {
        var metres = need.PartsAtController ? 0 : Wires.MetresTo(need.Shared.Path, need.Joint);
        var amperes = need.Shared.Path is var path && foresight.Of(Wires.Only(path, [need.Valve.End])) is { } alone ? alone.Amperes : 0;
        var allowed = numbers.DropMargin * (site.Book.Supply.RatedVolts - site.Book.Coil.PullInVolts);
        var sizes = numbers.Wires.ToDictionary(w => WireSize.FromAwg(w.Awg));
        var size = ScalarDrop.SizeFor(ScalarDrop.MostOhmsPerMetre(allowed, Math.Max(amperes, double.Epsilon), Math.Max(metres, 1)), site.Book.Wire.SoilKelvins, [.. sizes.Keys]);
        var chosen = size.Succeeded ? size.Value : sizes.Keys.MaxBy(s => s.DiameterMetres);
        var length = CostLine.Exact(metres);
        var lines = new[]
        {
            CostLine.Of("get ready, utility marks included", numbers.PullReadyMinutes, numbers.HourPrice),
            CostLine.Of($"lay {Say.Length(metres, site.Notebook.History.Facts.UsesUsUnits)} of {chosen}", length * numbers.PullMetreMinutes, numbers.HourPrice, length * sizes[chosen].MetrePrice),
        };
        var cable = new Leg("new cable", need.Controller, need.Joint, metres, site.Book.Wire.LengthSpread.Estimated, chosen, BackSize(need), -1);
        var after = metres > 0 ? See(need, $"pulled {chosen}", null, cable) : null;
        var told = Told(RemedyKind.Pull, $"lay a new conductor, {chosen}", [.. lines, .. Work(need, false)], 0, 1, 0, after);
        return new Remedy(size.Succeeded ? told : told with { IsPossible = false, Why = size.Problem!.Reason }, Gauge: chosen.ToString());
    }

    /// <summary>The common stays as it lies: its thinnest stretch counts.</summary>
    private static WireSize BackSize(Need need) => Wires.To(need.Shared.Path, need.Joint).Select(l => l.CommonSize).DefaultIfEmpty(WireSize.FromAwg(18)).MinBy(s => s.DiameterMetres);

    private Remedy Keep(Need need) => new(new Alternative(RemedyKind.Keep, "leave it with the others, on purpose", new CostSheet([CostLine.Of("what it costs over the years to run them together", 0, 0, numbers.KeptPrice)]), numbers.KeptPrice, 1, true, null, null));

    private Remedy TwoWire(Need need)
    {
        var way = numbers.TwoWire;
        var sheet = new CostSheet([CostLine.Of("a base at the controller", way.BaseMinutes, numbers.HourPrice, way.BasePrice), CostLine.Of("a receiver at the valve", way.ValveMinutes, numbers.HourPrice, way.ValvePrice)]);
        return new Remedy(new Alternative(RemedyKind.TwoWire, "signal over two wires", sheet, sheet.Price, 1, false, need.PartsAtController ? "its own conductor is there" : "for comparison: it changes how the whole controller works", null));
    }

    private Alternative Told(RemedyKind kind, string say, IReadOnlyList<CostLine> work, decimal trying, double chance, decimal fallback, Foreseen? after)
    {
        var tried = trying == 0 ? [] : new[] { CostLine.Of("find it there and prove it end to end under load", trying, numbers.HourPrice) };
        var sheet = new CostSheet([.. tried, .. work]);
        var spent = tried.Sum(l => l.Price);
        var expected = decimal.Round(spent + ((decimal)chance * (sheet.Price - spent)) + ((1 - (decimal)chance) * fallback), 2, MidpointRounding.AwayFromZero);
        var weak = after is null || after.Opens < numbers.OpensAt;
        return new Alternative(kind, say, sheet, expected, chance, !weak, weak ? Weak(after) : chance < 1 ? $"{Say.Share(1 - chance)} that it is no good" : null, after);
    }

    private static string Weak(Foreseen? after) => after is null ? "no circuit can be worked out"
        : $"{Say.Amount(after.WorstVolts, after.WorstVoltsSpread, Dimension.Voltage)} reach the coil{(after.Company.Count > 0 ? $" with station {string.Join(", ", after.Company)} on" : string.Empty)}, it pulls in at about {Say.Figure(after.NeedsVolts, Dimension.Voltage)}";

    private IReadOnlyList<CostLine> Work(Need need, bool isLanded)
    {
        var walk = CostLine.Exact(2 * site.Notebook.WalkMinutes(need.Controller, need.Joint));
        return
        [
            CostLine.Of("walk there and back", walk, numbers.HourPrice),
            CostLine.Of($"part it at {site.View.Name(need.Joint)} and join it", Repair(need.Shared.Repair), numbers.HourPrice, numbers.Connectors * numbers.ConnectorPrice),
            .. isLanded ? [] : new[] { Land() },
            .. Check(),
        ];
    }

    private CostLine Land() => CostLine.Of("put it on a terminal", numbers.LandMinutes, numbers.HourPrice);

    private IEnumerable<CostLine> Check() => [CostLine.Of("check it alone: places, amperes, ohms", CheckMinutes(site.Book), numbers.HourPrice)];

    /// <summary>A run, its amperes and its ohms.</summary>
    public static decimal CheckMinutes(PracticeBook book) =>
        CostLine.Exact(book.Run.Minutes + book.Probes.Where(p => p.Measures is Measure.StationOhms or Measure.StationAmps).Sum(p => p.Minutes));

    private decimal Repair(string name) => CostLine.Exact(site.Book.Repair(name)?.Minutes ?? 0);

    private bool Passes(Need need, string end) => Wires.To(need.Shared.Path, need.Joint).Any() && site.View.Cables.Count > 0
        && (need.Shared.Path.LegTo(end) is var leg and >= 0 ? need.Shared.Path.IsBehind(leg, need.Shared.Path.LegTo(need.Joint))
            : site.Notebook.Paths.Values.Any(p => p.Controller == need.Controller && p.LegTo(end) is var at and >= 0 && p.LegTo(need.Joint) is var here and >= 0 && p.IsBehind(at, here)));

    private Foreseen? See(Need need, string how, Func<Leg, Leg>? changed, Leg? cable = null)
    {
        var key = (need.Station, need.Number, how);
        if (!seen.TryGetValue(key, out var after))
        {
            var (path, end, branch) = (need.Shared.Path, need.Valve.End, need.Valve.Branch);
            after = foresight.Of(cable is null ? Wires.Own(path, end, NewStation, branch, changed!) : Wires.Pulled(path, end, NewStation, need.Joint, branch, cable));
            seen[key] = after;
        }

        return after;
    }
}
