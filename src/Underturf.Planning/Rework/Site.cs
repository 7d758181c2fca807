using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Planning.Rework;

/// <summary>What a rework finds: shared stations, conductors that carry nothing, terminals without a station, stations that water nothing, and how far it is.</summary>
internal sealed class Site
{
    /// <summary>More free terminals than this are not listed, whatever somebody noted.</summary>
    private const int MostFree = 200;

    public Site(Notebook notebook)
    {
        Notebook = notebook;
        View = notebook.History.Now;
        var facts = notebook.History.Facts;
        Kept = facts.ReworkSteps.Where(s => s.Fact.Did == ReworkDeeds.Kept).Select(s => View.Identity.Of(s.Fact.Station)).ToHashSet(StringComparer.Ordinal);
        Shared = [.. notebook.Shared()];
        Spares = [.. notebook.Spares().Where(s => !Tried(s.Wire, ReworkDeeds.Useless))];
        Abandoned = [.. View.Stations.Keys.Where(IsAbandoned)];
    }

    public Notebook Notebook { get; }

    public PropertyView View { get; }

    public PracticeBook Book => Notebook.Book;

    public ReworkPractice Numbers => Notebook.Book.Rework;

    public IReadOnlyList<SharedStation> Shared { get; }

    /// <summary>Stations whose valves were left together on purpose.</summary>
    public IReadOnlySet<string> Kept { get; }

    public IReadOnlyList<SpareWire> Spares { get; }

    /// <summary>Ids of stations that are on a terminal and water nothing: no place, no valve, an open conductor.</summary>
    public IReadOnlyList<string> Abandoned { get; }

    /// <summary>Whether a step of the log says so of a conductor.</summary>
    public bool Tried(string wire, string did, string? place = null) => Notebook.History.Facts.ReworkSteps
        .Any(s => s.Fact.Did == did && s.Fact.Wire is { } w && View.Identity.Of(w) == wire && (place is null || (s.Fact.Place is { } p && View.Identity.Of(p) == place)));

    /// <summary>The terminal on which a conductor was put during this rework and on which no station is noted yet.</summary>
    public int? LandedOn(string wire) => Notebook.History.Facts.ReworkSteps
        .LastOrDefault(s => s.Fact.Did == ReworkDeeds.Landed && s.Fact.Wire is { } w && View.Identity.Of(w) == wire)?.Fact.Terminal;

    /// <summary>Terminals without a station, those with a landed conductor left out.</summary>
    public IReadOnlyList<int> Free(string controller)
    {
        var taken = View.Stations.Values.Where(s => View.Identity.Of(s.Controller) == controller).Select(s => s.Terminal).ToHashSet();
        taken.UnionWith(Spares.Where(s => s.Controller == controller).Select(s => LandedOn(s.Wire)).OfType<int>());
        return View.Controllers.TryGetValue(controller, out var known) ? [.. Enumerable.Range(1, known.Terminals).Where(t => !taken.Contains(t)).Take(MostFree)] : [];
    }

    private bool IsAbandoned(string station)
    {
        var facts = Notebook.History.Facts;
        return View.Stations[station].Waters.Count == 0
            && !View.ValvesOf(station).Any()
            && !facts.Tests.Any(t => View.Identity.Of(t.Fact.Station) == station && t.Fact.Watered.Count > 0)
            && !Tried(station, ReworkDeeds.Useless)
            && facts.Readings.LastOrDefault(r => Book.Probe(r.Fact.How)?.Measures == Measure.StationOhms && r.Fact.Stations is [var s] && View.Identity.Of(s) == station) is { Fact.Value.IsOverRange: true };
    }
}
