using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Planning.Repair;

/// <summary>A junction box to repair: its joints as noted or, where nobody noted ends, as the cables have them.</summary>
internal sealed class BoxCase
{
    public BoxCase(RepairSite site, string id)
    {
        (Site, Id) = (site, id);
        Card = BoxCard.Of(site.Notebook.History, id)!;
        Rebuild = BoxRebuild.Of(site.Notebook.History, Card);
        Wrong = new WrongFinder(site.View, site.Book, site.Answers).OfBox(id);
        IsNoted = Card.EndCount > 0;
        Wired = IsNoted ? [.. Card.Joints.Where(j => j.IsJoined).Select(Noted)] : [.. ByCables()];
        Stations = [.. Wired.Select(j => j.Station).OfType<string>().Distinct().OrderBy(site.View.StationNumber, NaturalOrder.Instance)];
    }

    public RepairSite Site { get; }

    public string Id { get; }

    public BoxCard Card { get; }

    public BoxRebuild Rebuild { get; }

    public IReadOnlyList<Wrong> Wrong { get; }

    /// <summary>Whether anybody noted its conductor ends.</summary>
    public bool IsNoted { get; }

    public IReadOnlyList<WiredJoint> Wired { get; }

    /// <summary>Ids of the stations that are joined here.</summary>
    public IReadOnlyList<string> Stations { get; }

    /// <summary>Ids of the stations that joints carry; the common carries all.</summary>
    public IReadOnlyList<string> StationsOf(IReadOnlyList<WiredJoint> joints) =>
        joints.Any(j => j.IsCommon) ? Stations : [.. joints.Select(j => j.Station).OfType<string>().Distinct()];

    public double? Chance => Wrong.Count == 0 ? null : Math.Min(1, Wrong.Sum(w => w.Chance));

    private WireSize StationSize => WireSize.FromAwg(Site.Book.Wire.StationAwg);

    private WireSize CommonSize => WireSize.FromAwg(Site.Book.Wire.CommonAwg);

    /// <summary>Whether belief points at a joint: at those of the stations of its question, or at the common where all of them hang on it.</summary>
    public bool IsSuspected(WiredJoint joint) => Wrong.Any(w =>
        Site.Book.Faults.First(f => f.Id == w.Fault).Scope == FaultScope.CommonSplice ? joint.IsCommon : joint.Station is { } s && w.Question.Stations.Contains(Site.View.StationNumber(s)));

    private WiredJoint Noted(Joint joint)
    {
        var common = joint.Ends.Any(e => e.Carries == "common");
        var sizes = joint.Ends.Select(e => (e.Name, Size: e.Gauge is { } g && WireSize.Parse(g) is { Succeeded: true, Value: var size } ? size : (WireSize?)null));
        var wires = sizes.Select(s => new Wire(s.Name, s.Size ?? (common ? CommonSize : StationSize), s.Size is not null))
            .Concat(Enumerable.Range(1, Math.Max(joint.Elsewhere, joint.Ends.Count == 0 ? 2 : 0)).Select(i => new Wire($"end {i} not noted", common ? CommonSize : StationSize, false)));
        return new WiredJoint([.. wires], joint.Ends.Select(e => e.Station).OfType<string>().FirstOrDefault(), common);
    }

    /// <summary>Every station that a cable brings here is joined here, to the cables that take it on and to its valves; so is the common.</summary>
    private IEnumerable<WiredJoint> ByCables()
    {
        var view = Site.View;
        var cables = view.Cables.Values.Where(c => IsHere(c.From) || IsHere(c.To)).ToList();
        var valves = view.Valves.Where(v => IsHere(v.Value.Box)).ToList();
        var common = new List<Wire>();
        foreach (var station in cables.SelectMany(c => c.Carries).Select(view.Identity.Of).Where(view.Stations.ContainsKey).Distinct().OrderBy(view.StationNumber, NaturalOrder.Instance))
        {
            var along = cables.Where(c => c.Carries.Select(view.Identity.Of).Contains(station)).ToList();
            var own = valves.Where(v => v.Value.Station is { } s && view.Identity.Of(s) == station).ToList();
            List<Wire> wires = [.. along.Select(c => new Wire($"to {Other(c)}", c.Gauge ?? StationSize, c.Gauge is not null)), .. own.Select(v => new Wire(view.Name(v.Key), StationSize, false))];
            if (wires.Count > 1)
            {
                yield return new WiredJoint(wires, station, false);
            }
        }

        common.AddRange(cables.Select(c => new Wire($"to {Other(c)}", c.CommonGauge ?? CommonSize, c.CommonGauge is not null)));
        common.AddRange(valves.Select(v => new Wire(view.Name(v.Key), StationSize, false)));
        if (common.Count > 1)
        {
            yield return new WiredJoint(common, null, true);
        }
    }

    private string Other(CableFact cable) => Site.View.Name(IsHere(cable.From) ? cable.To : cable.From);

    private bool IsHere(string? place) => place is not null && Site.View.Identity.Of(place) == Id;
}

/// <summary>One conductor of a joint.</summary>
/// <param name="IsNoted">Somebody noted its size; otherwise it is taken as usual.</param>
internal sealed record Wire(string Name, WireSize Size, bool IsNoted);

internal sealed record WiredJoint(IReadOnlyList<Wire> Wires, string? Station, bool IsCommon);
