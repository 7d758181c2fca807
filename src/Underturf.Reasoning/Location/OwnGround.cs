using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Location;

/// <summary>What on the ground belongs to one thing.</summary>
/// <param name="Watered">Outlines of what it waters.</param>
/// <param name="Routes">Ways of its conductor.</param>
/// <param name="Last">The last places that its conductor is known to pass.</param>
internal sealed record OwnGround(IReadOnlyList<GroundShape> Watered, IReadOnlyList<GroundShape> Routes, IReadOnlyList<GroundShape> Last)
{
    public static OwnGround None { get; } = new([], [], []);
}

/// <summary>Finds what on the ground belongs to a station: the places it waters, and the ways of its conductor.</summary>
internal sealed class OwnGroundFinder(PropertyHistory history, PracticeBook book)
{
    private readonly PropertyView view = history.Now;
    private readonly Lazy<Dictionary<string, StationPath>> paths = new(() => new PathFinder(history.Now, book).All().ToDictionary(p => p.Station, StringComparer.Ordinal));

    /// <param name="place">One of the places that the station waters; all where nothing is said.</param>
    /// <param name="cable">A cable that it lies on.</param>
    public OwnGround Of(string? station, string? place = null, string? cable = null) => new(Watered(station, place), Routes(station, cable), Last(station));

    /// <summary>Names of the places that a station is known to water or was seen to.</summary>
    public IReadOnlyList<string> Places(string station) =>
    [
        .. view.Stations[station].Waters
            .Concat(history.Facts.Tests.Where(t => view.Identity.Of(t.Fact.Station) == station).SelectMany(t => t.Fact.Watered))
            .Distinct(StringComparer.OrdinalIgnoreCase),
    ];

    /// <summary>Ground that bears the name of the place, or of any that the station waters.</summary>
    public IReadOnlyList<GroundShape> Watered(string? station, string? place = null)
    {
        IReadOnlyList<string> places = place is not null ? [place] : station is not null && view.Stations.ContainsKey(station) ? Places(station) : [];
        return [.. view.Ground.Values.Where(g => g.Label is { } label && places.Contains(label, StringComparer.OrdinalIgnoreCase)).Select(g => GroundShape.Outline(g.Shape))];
    }

    /// <summary>Ways of the cables that carry a station, of one cable, and of signals that were followed.</summary>
    private IReadOnlyList<GroundShape> Routes(string? station, string? cable) =>
    [
        .. view.Cables.Where(c => (cable is not null && view.Identity.Of(cable) == c.Key) || c.Value.Carries.Any(s => view.Identity.Of(s) == station)).Select(c => RouteOf(c.Value)).OfType<GroundShape>(),
        .. history.Facts.Traces.Where(t => t.Fact.Route.Count > 1 && t.Fact.Of.Any(o => view.Identity.Of(o) == station)).Select(t => GroundShape.Line(t.Fact.Route)),
    ];

    private IReadOnlyList<GroundShape> Last(string? station) =>
        station is not null && paths.Value.TryGetValue(station, out var path) && path.Legs.Count > 0
            ? [.. path.Legs.Where(leg => path.Legs.All(l => l.From != leg.To)).Select(leg => view.PositionOf(leg.To)).OfType<Position>().Select(GroundShape.Point)]
            : [];

    /// <summary>As it was drawn, or straight between its ends; nothing where neither is known.</summary>
    private GroundShape? RouteOf(CableFact cable) =>
        cable.Route.Count > 1 ? GroundShape.Line(cable.Route)
        : view.PositionOf(cable.From) is { } from && view.PositionOf(cable.To) is { } to ? GroundShape.Line([from, to])
        : null;
}
