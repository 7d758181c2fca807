using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Moves;

/// <summary>Minutes from place to place.</summary>
/// <param name="tied">Where taped distances put things, worked out when a walk is asked for.</param>
internal sealed class Walks(PropertyView view, PracticeBook book, Func<TiedPlaces> tied)
{
    public Walks(Case owner)
        : this(owner.View, owner.Book, () => owner.Tied)
    {
    }

    /// <summary>Noted or only named by stations.</summary>
    private IEnumerable<string> Controllers => view.Controllers.Keys.Concat(view.Stations.Values.Select(s => view.Identity.Of(s.Controller)));

    private IEnumerable<string> Known => Controllers.Concat(view.Boxes.Keys).Concat(view.Valves.Keys).Concat(view.IsolationValves.Keys).Concat(view.WaterSupplies.Keys).Concat(view.Fittings.Keys).Distinct();

    /// <summary>As the crow flies; a place that nobody has found has to be found first.</summary>
    public double Minutes(string from, string to)
    {
        if (from == to)
        {
            return 0;
        }

        var walk = book.Walk;
        var metres = tied().View.PositionOf(to) is { } there && tied().View.PositionOf(from) is { } here ? here.DistanceMetresTo(there) : walk.UnknownMetres;
        return (metres / walk.MetresPerMinute) + Finding(to);
    }

    /// <summary>The move with the way to its place, told as walking and finding.</summary>
    /// <param name="minutes">Of the way; none for somebody who is there.</param>
    public Move Reached(Move move, double minutes) => Math.Min(minutes, Finding(move.Place)) is var find ? move with { WalkMinutes = minutes - find, FindMinutes = find } : move;

    /// <summary>Minutes until a place is found that nobody has found yet.</summary>
    private double Finding(string place) => IsFound(place) ? 0 : book.Walk.FindMinutes;

    /// <summary>The id of the place that somebody names.</summary>
    public Outcome<string> Find(string name) => new NameFinder(view).Find(Known, name, "place");

    private bool IsFound(string place) => view.Boxes.ContainsKey(place) || view.Valves.ContainsKey(place) || view.IsolationValves.ContainsKey(place) || view.WaterSupplies.ContainsKey(place) || Controllers.Contains(place);
}
