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
internal sealed class OwnGroundFinder(PropertyHistory history, PropertyView view, PracticeBook book)
{
    private readonly Lazy<Dictionary<string, StationPath>> paths = new(() => new PathFinder(view, book).All().ToDictionary(p => p.Station, StringComparer.Ordinal));

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
        return [.. view.Ground.Values.Where(g => g.Label is { } label && places.Contains(label, StringComparer.OrdinalIgnoreCase)).Select(g => GroundShape.Of(g))];
    }

    /// <summary>Ways of the cables that carry a station, of one cable, and of signals that were followed.</summary>
    private IReadOnlyList<GroundShape> Routes(string? station, string? cable) =>
    [
        .. view.Cables.Where(c => (cable is not null && view.Identity.Of(cable) == c.Key) || c.Value.Carries.Any(s => view.Identity.Of(s) == station)).Select(c => RouteOf(c.Value)).OfType<GroundShape>(),
        .. Traces(station).Where(t => t.Route.Count > 1).Select(t => GroundShape.Line(t.Route)),
    ];

    /// <summary>Where the known path of a station's conductor ends, with the length of it from a place that it passes and the spread of that; nothing where it does not pass there.</summary>
    public (Position At, double Metres, double SpreadMetres)? PathFrom(string place, string? station)
    {
        if (station is null || !paths.Value.TryGetValue(station, out var path) || Leaves(path) is not [var leaf, ..])
        {
            return null;
        }

        var (metres, variance) = (0.0, 0.0);
        for (var leg = leaf; leg >= 0; leg = path.Legs[leg].Parent)
        {
            metres += path.Legs[leg].LengthMetres;
            variance += path.Legs[leg].LengthMetres * path.Legs[leg].LengthMetres * path.Legs[leg].LogSpread * path.Legs[leg].LogSpread;
            if (path.Legs[leg].From == place)
            {
                return (view.PositionOf(path.Legs[leaf].To)!.Value, metres, Math.Sqrt(variance));
            }
        }

        return null;
    }

    /// <summary>Traces of a station that are noted in words of the practice book.</summary>
    private IEnumerable<TraceFact> Traces(string? station) =>
        from trace in history.Facts.Traces.Select(t => t.Fact)
        where station is not null && trace.Of.Any(o => view.Identity.Of(o) == station) && book.Locating.TracingBy(trace.How) is not null && book.Locating.End(trace.Ended) is not null
        select trace;

    /// <summary>Where signals were followed to and the thing is likelier not to be, or, without such, where known cables end.</summary>
    private IReadOnlyList<GroundShape> Last(string? station)
    {
        var ends = Traces(station).Where(t => t.Route.Count > 0 && book.Locating.End(t.Ended)!.Hit < 0.5).Select(t => GroundShape.Point(t.Route[^1])).ToList();
        return ends.Count > 0 ? ends
            : station is not null && paths.Value.TryGetValue(station, out var path) ? [.. Leaves(path).Select(leg => GroundShape.Point(view.PositionOf(path.Legs[leg].To)!.Value))]
            : [];
    }

    /// <summary>Legs to a place that has a position, from where none goes on to another such.</summary>
    private List<int> Leaves(StationPath path)
    {
        var placed = path.Legs.Index().Where(l => view.PositionOf(l.Item.To) is not null).ToList();
        return [.. placed.Where(l => placed.All(other => other.Item.From != l.Item.To)).Select(l => l.Index)];
    }

    /// <summary>As it was drawn, or straight between its ends; nothing where neither is known.</summary>
    private GroundShape? RouteOf(CableFact cable) =>
        cable.Route.Count > 1 ? GroundShape.Line(cable.Route)
        : view.PositionOf(cable.From) is { } from && view.PositionOf(cable.To) is { } to ? GroundShape.Line([from, to])
        : null;
}
