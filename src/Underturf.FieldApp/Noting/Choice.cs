using Underturf.Property;

namespace Underturf.FieldApp;

/// <summary>One thing to choose, by its id, with what people call it.</summary>
public sealed record Choice(string Id, string Label)
{
    /// <summary>Stations by their numbers, in the order of controllers and terminals.</summary>
    public static IReadOnlyList<Choice> Stations(PropertyView view) =>
        [.. InSweepOrder(view).Select(station => new Choice(station, view.StationNumber(station)))];

    /// <summary>Controllers, boxes and valves.</summary>
    public static IReadOnlyList<Choice> Places(PropertyView view) =>
        [.. view.Controllers.Keys.Concat(Named(view.Boxes.Keys, view)).Concat(Named(view.Valves.Keys, view)).Select(id => new Choice(id, view.Name(id)))];

    /// <summary>Stations as one takes them at the controller, terminal after terminal.</summary>
    public static IReadOnlyList<string> InSweepOrder(PropertyView view) =>
    [
        .. view.Stations
            .OrderBy(s => view.Name(s.Value.Controller), NaturalOrder.Instance)
            .ThenBy(s => s.Value.Terminal)
            .ThenBy(s => s.Key, NaturalOrder.Instance)
            .Select(s => s.Key),
    ];

    private static IEnumerable<string> Named(IEnumerable<string> ids, PropertyView view) => ids.OrderBy(view.Name, NaturalOrder.Instance);
}
