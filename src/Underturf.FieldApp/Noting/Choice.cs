using Underturf.Property;

namespace Underturf.FieldApp;

/// <summary>One thing to choose, by its id, with what people call it.</summary>
public sealed record Choice(string Id, string Label)
{
    /// <summary>Stations by their numbers, in the order of controllers and terminals.</summary>
    public static IReadOnlyList<Choice> Stations(PropertyView view) =>
        [.. InSweepOrder(view).Select(station => new Choice(station, view.StationNumber(station)))];

    /// <summary>Controllers, boxes, valves, and where water comes in and is shut off.</summary>
    public static IReadOnlyList<Choice> Places(PropertyView view) =>
        [.. view.Controllers.Keys.Select(id => new Choice(id, view.Name(id))), .. ByName(view.Boxes.Keys, view), .. ByName(view.Valves.Keys, view), .. ByName(view.IsolationValves.Keys, view), .. ByName(view.WaterSupplies.Keys, view)];

    /// <summary>Stations as one takes them at the controller, terminal after terminal.</summary>
    public static IReadOnlyList<string> InSweepOrder(PropertyView view) =>
    [
        .. view.Stations
            .OrderBy(s => view.Name(s.Value.Controller), NaturalOrder.Instance)
            .ThenBy(s => s.Value.Terminal)
            .ThenBy(s => s.Key, NaturalOrder.Instance)
            .Select(s => s.Key),
    ];

    /// <summary>Things in the order of what people call them.</summary>
    public static IEnumerable<Choice> ByName(IEnumerable<string> ids, PropertyView view) =>
        ids.Select(id => new Choice(id, view.Name(id))).OrderBy(choice => choice.Label, NaturalOrder.Instance);
}
