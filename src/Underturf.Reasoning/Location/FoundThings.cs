using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Reasoning.Location;

/// <summary>Where things were found on this property: boxes with a position, and valves that lie in none.</summary>
internal static class FoundThings
{
    public static IReadOnlyList<FoundThing> Of(PropertyView view) =>
    [
        .. view.Boxes
            .Where(b => b.Value.Position is not null)
            .Select(b => new FoundThing(b.Key, b.Value.Position!.Value, StationIn(view, b.Key))),
        .. view.Valves
            .Where(v => v.Value.Position is not null && v.Value.Box is null)
            .Select(v => new FoundThing(v.Key, v.Value.Position!.Value, v.Value.Station is { } s ? view.Identity.Of(s) : null)),
    ];

    private static string? StationIn(PropertyView view, string box) =>
        view.Valves.Where(v => v.Value.Box is { } b && view.Identity.Of(b) == box && v.Value.Station is not null).OrderBy(v => v.Key, StringComparer.Ordinal).Select(v => view.Identity.Of(v.Value.Station!)).FirstOrDefault();
}

/// <summary>A thing that was found.</summary>
/// <param name="Station">The station of a valve there.</param>
internal sealed record FoundThing(string Id, Position At, string? Station);
