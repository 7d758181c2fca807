using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Moves;

/// <summary>Minutes from place to place.</summary>
internal sealed class Walks(Case owner)
{
    /// <summary>Places named in a message at most.</summary>
    private const int MostNamed = 12;

    private IEnumerable<string> Known => owner.View.Controllers.Keys.Concat(owner.Paths.Values.Select(p => p.Controller)).Concat(owner.View.Boxes.Keys).Concat(owner.View.Valves.Keys).Concat(owner.View.IsolationValves.Keys).Concat(owner.View.WaterSupplies.Keys).Concat(owner.View.Fittings.Keys).Distinct();

    /// <summary>As the crow flies; a place that nobody has found has to be found first.</summary>
    public double Minutes(string from, string to)
    {
        if (from == to)
        {
            return 0;
        }

        var walk = owner.Book.Walk;
        var metres = owner.Tied.View.PositionOf(to) is { } there && owner.Tied.View.PositionOf(from) is { } here ? here.DistanceMetresTo(there) : walk.UnknownMetres;
        return (metres / walk.MetresPerMinute) + (IsFound(to) ? 0 : walk.FindMinutes);
    }

    /// <summary>The id of the place that somebody names by id or label.</summary>
    public Outcome<string> Find(string name)
    {
        var id = owner.View.Identity.Of(name.Trim());
        if (Known.Contains(id))
        {
            return id;
        }

        var called = Known.Where(p => string.Equals(owner.View.Name(p), name.Trim(), StringComparison.OrdinalIgnoreCase)).ToList();
        return called switch
        {
            [var only] => only,
            [] => new Problem($"place {Problem.Quote(name)}", "is not noted", $"Name one of: {string.Join(", ", Known.Select(owner.View.Name).Take(MostNamed))}"),
            _ => new Problem($"place {Problem.Quote(name)}", $"is the label of {called.Count} places", $"Name one by its id: {string.Join(", ", called.Take(MostNamed))}"),
        };
    }

    private bool IsFound(string place) => owner.View.Boxes.ContainsKey(place) || owner.View.Valves.ContainsKey(place) || owner.View.IsolationValves.ContainsKey(place) || owner.View.WaterSupplies.ContainsKey(place) || owner.Paths.Values.Any(p => p.Controller == place);
}
