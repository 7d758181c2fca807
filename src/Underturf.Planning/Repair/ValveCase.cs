using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Water;

namespace Underturf.Planning.Repair;

/// <summary>A valve to repair, with all that the notes say of it and of the ground round it.</summary>
internal sealed class ValveCase
{
    private const double Endless = 1e5;

    public ValveCase(RepairSite site, string id)
    {
        (Site, Id, Fact) = (site, id, site.View.Valves[id]);
        Box = Fact.Box is { } box && site.View.Boxes.ContainsKey(site.View.Identity.Of(box)) ? site.View.Identity.Of(box) : null;
        Station = Fact.Station is { } station && site.View.Stations.ContainsKey(site.View.Identity.Of(station)) ? site.View.Identity.Of(station) : null;
        At = site.Notebook.Tied.View.PositionOf(id);
        Round = RepairRound.Of(site.Notebook.History, id);
        Roots = At is { } at ? [.. Near(at)] : [];
        Paving = At is { } here ? Paved(here) : null;
        Shut = site.Notebook.Isolate(id, id) is { Succeeded: true, Value: var isolation } ? isolation : null;
        Donors = new DonorFinder(site.Notebook.History, site.Numbers.Donors).For(id);
        Wrong = new WrongFinder(site.View, site.Book, site.Answers).OfValve(id);
        Causes = Weights();
    }

    public RepairSite Site { get; }

    public string Id { get; }

    public ValveFact Fact { get; }

    public string? Box { get; }

    public string? Station { get; }

    public Position? At { get; }

    public RepairRound Round { get; }

    public IReadOnlyList<(TreeGround Ground, double Metres)> Roots { get; }

    /// <summary>Paving that the hole cuts into.</summary>
    public string? Paving { get; }

    public IsolationAnswer? Shut { get; }

    /// <summary>Isolation valves to open again: those it has yet to shut, and those shut since it was begun. What stood shut before stays so.</summary>
    public IEnumerable<string> Reopened => Shut is not { } shut ? [] : shut.Shut.Select(s => s.Id).Where(Site.View.IsolationValves.ContainsKey).Concat(shut.Stands.Select(s => s.Id).Where(ShutByIt));

    public string ShutWords => (Shut?.Stands, Shut?.Shut) switch
    {
        (null or [], null or []) => "find what shuts it off",
        ({ } stands, null or []) => $"leave {Names(stands)} shut",
        (null or [], { } shut) => $"shut {Names(shut)}",
        var (stands, shut) => $"leave {Names(stands)} shut; shut {Names(shut)}",
    };

    public IReadOnlyList<DonorMatch> Donors { get; }

    /// <summary>The best whose inside may be taken.</summary>
    public DonorMatch? Donor => Donors.FirstOrDefault(d => d.Spare);

    public IReadOnlyList<Wrong> Wrong { get; }

    /// <summary>What is wrong with it, given that something is, what was seen and what was tried in vain.</summary>
    public CauseWeights Causes { get; }

    public string Name => Site.View.Name(Id);

    /// <summary>Where one stands.</summary>
    public string Place => Box ?? Id;

    public ValveSizePractice Size => ValveSizes.Of(Site.Numbers, Fact);

    /// <summary>Chance that something is wrong with it; nothing where no question is about it.</summary>
    public double? Chance => Wrong.Count == 0 ? null : Math.Min(1, Wrong.Sum(w => w.Chance));

    /// <summary>The quickest way to work in a wet hole, of those that come to an end. Nothing is cemented under water: for a new valve the hole has to be dry.</summary>
    public HoleWay? Hole(RepairKind kind) => Shut?.Hole?.Ways.FirstOrDefault(w => w.MostMinutes < Endless && (kind != RepairKind.Replace || w.Before is not null));

    public IEnumerable<string> Unknown()
    {
        if (At is null)
        {
            yield return "where it lies: roots and paving are not counted";
        }
        else if (RootFinder.Unmeasured(Site.View, Site.Numbers.Roots, At.Value) is { } tree)
        {
            yield return $"the trunk diameter of {tree}: its roots may reach here";
        }

        if (Fact.Size is null)
        {
            yield return $"its size: prices are those of {Size.Inches:0.##} in";
        }

        var looks = new[] { (Fact.Body is null, "body style"), (Fact.Screws is null, "bonnet screws"), (Fact.Thread is null, "coil thread") }.Where(l => l.Item1).Select(l => l.Item2).ToList();
        if (looks.Count > 0)
        {
            yield return $"{string.Join(", ", looks)}: match parts before you open it";
        }

        if (Shut?.Needed is { } needed)
        {
            yield return $"what shuts it off: {needed}";
        }

        if (Shut?.Hole is null or { Ways: [] })
        {
            yield return "how water stands in the hole";
        }
    }

    private static string Names(IEnumerable<ShutStep> some) => string.Join(" and ", some.Select(s => s.Name));

    private bool ShutByIt(string isolation) => Site.Notebook.History.Facts.Settings.Where(s => Site.View.Identity.Of(s.Fact.Of) == isolation).MaxBy(s => s.Moment) is { } last && last.Moment >= Round.Begun;

    private CauseWeights Weights()
    {
        var faults = Wrong.GroupBy(w => w.Fault).ToDictionary(g => g.Key, g => g.Sum(w => w.Chance), StringComparer.Ordinal);
        var before = Round.Faults.ToDictionary(f => f, _ => 1.0, StringComparer.Ordinal);
        var prior = CauseWeights.Of(Site.Numbers.Causes, faults.Count > 0 ? faults : before.Count > 0 ? before : Site.UsualFaults);
        return Round.Vain.Aggregate(prior.After(Round.Seen, Round.Done.Contains(RepairSteps.Opened)), (weights, kind) => weights.AfterVain(kind));
    }

    private IEnumerable<(TreeGround Ground, double Metres)> Near(Position at) => RootFinder.Of(Site.View, Site.Numbers.Roots)
        .Select(g => (Ground: g, Metres: g.Trunk.DistanceMetresTo(at)))
        .Where(g => g.Metres <= g.Ground.RadiusMetres)
        .OrderBy(g => g.Metres);

    private string? Paved(Position at) => Site.View.Ground
        .Where(g => g.Value is { What: "hardscape", Shape.Count: > 0 })
        .Select(g => (g.Key, Shape: GroundShape.Of(g.Value)))
        .Where(g => g.Shape.Contains(at) || g.Shape.DistanceMetresTo(at) <= Site.Numbers.Paving.ReachMetres)
        .Select(g => g.Key).FirstOrDefault();

    /// <summary>To the nearest point that is clear of roots and paving, the clearance counted in.</summary>
    public double ClearMetres()
    {
        var roots = Roots.Select(r => r.Ground.RadiusMetres - r.Metres).DefaultIfEmpty(0).Max();
        var paving = Paving is { } id && GroundShape.Of(Site.View.Ground[id]) is var shape && shape.Contains(At!.Value) ? shape.DistanceMetresTo(At.Value) : 0;
        return Math.Max(roots, paving) + Site.Numbers.Moving.ClearMetres;
    }

    public string Length(double metres) => Say.Length(metres, Site.UsUnits);
}
