using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Moves;

namespace Underturf.Reasoning.Water;

/// <summary>What to shut so that a place has no pressure: asks nothing of what is believed, so that it answers at once.</summary>
public static class MakingDry
{
    /// <param name="tied">Where taped distances put things.</param>
    /// <param name="place">Label or id of a valve, station, box, fitting, pipe or isolation valve.</param>
    /// <param name="at">Where one is: label or id of a place; the controller where nothing is said.</param>
    public static Outcome<IsolationAnswer> Of(PropertyHistory history, TiedPlaces tied, PracticeBook book, string place, string? at = null) =>
        Of(new WaterCase(history, book), new Walks(history.Now, book, () => tied), place, at);

    /// <summary>What can be named as a place: everything that water comes to, in the order people count.</summary>
    public static PlacesToDry Places(PropertyView view, PracticeBook book)
    {
        var holding = view.Valves.Values.Select(v => v.Box).OfType<string>().Select(view.Identity.Of).ToHashSet(StringComparer.Ordinal);
        (string Kind, IEnumerable<string> Ids)[] kinds =
        [
            ("station", view.Stations.Keys), ("valve", view.Valves.Keys), ("box", view.Boxes.Keys.Where(holding.Contains)),
            ("isolation valve", view.IsolationValves.Keys), ("fitting", view.Fittings.Keys), ("pipe", view.Pipes.Keys),
        ];
        return new PlacesToDry(Notebook.Engine, book.Version, [.. kinds.SelectMany(k => k.Ids.Select(id => new PlaceToDry(k.Kind, id, view.Name(id))).OrderBy(p => p.Name, NaturalOrder.Instance))]);
    }

    internal static Outcome<IsolationAnswer> Of(WaterCase water, Walks walks, string place, string? at)
    {
        var stand = at is null ? null : (Outcome<string>?)walks.Find(at);
        return stand is { Succeeded: false } ? stand.Value.Problem! : new IsolationWriter(water, walks).Write(place, stand?.Value);
    }
}
