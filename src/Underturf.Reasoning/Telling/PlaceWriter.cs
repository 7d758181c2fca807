using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Telling;

/// <summary>Says where an explanation can sit, and names what is wrong there.</summary>
internal sealed class PlaceWriter(Case owner, Subject subject)
{
    private const double MuchLikelier = 1.25;

    /// <summary>Most probable first; probabilities are of the place given the worlds.</summary>
    public List<PlaceProbability> Places(IReadOnlyList<World> worlds)
    {
        var total = worlds.Sum(w => w.Probability);
        return [.. worlds
            .Select(w => (Seat: PlaceOf(w), w.Probability))
            .Where(w => w.Seat.Place is not null)
            .GroupBy(w => w.Seat)
            .Select(g => new PlaceProbability(owner.View.Name(g.Key.Place!), g.Sum(w => w.Probability) / total, g.Key.From) { Id = g.Key.Place })
            .OrderByDescending(p => p.Probability)
            .ThenBy(p => p.Place, NaturalOrder.Instance)];
    }

    /// <summary>Its place; for what sits inside a run also where the run to that place begins.</summary>
    private (string? Place, string? From) PlaceOf(World world)
    {
        if (world.Suspects.FirstOrDefault(s => s.Place is not null) is not { } suspect)
        {
            return (null, null);
        }

        var leg = suspect.IsInside || suspect.Fault.Scope is FaultScope.Conductor or FaultScope.CommonConductor or FaultScope.Run
            ? subject.LegOf(suspect, owner)
            : null;
        return (suspect.Place, leg is null ? null : owner.View.Name(leg.From));
    }

    public string Summary(World world, IReadOnlyList<PlaceProbability> places)
    {
        if (world.IsSound)
        {
            var run = owner.Evidence.OfType<RunEvidence>().LastOrDefault(e => subject.Stations.Contains(e.Stations[0]));
            return subject.IsWeak && run is not null ? $"{owner.Book.AsBuilt.Say}; {run.VoltsAtCoil(subject.Outlook)} reach the coil, it pulls in at about {owner.Book.Coil.PullInVolts:0.#} V" : owner.Book.AsBuilt.Say;
        }

        var what = string.Join("; ", world.Suspects.Select(s => s.Fault.Say + Partner(s)));
        return what + Where(places);
    }

    /// <summary>One place where it is clear or clearly likelier than the next; else how many there are.</summary>
    private static string Where(IReadOnlyList<PlaceProbability> places) => places switch
    {
        [] => string.Empty,
        [var only] => $", {At(only)}",
        [var first, ..] when first.Probability > 0.9 => $", {At(first)}",
        [var first, var second, ..] when first.Probability > MuchLikelier * second.Probability => $", most likely {At(first)}",
        [var first, var second] => $", {At(first)} or {At(second)}",
        _ => $", at one of {places.Count} places",
    };

    private static string At(PlaceProbability place) => place.From is null ? $"at {place.Place}" : place.Label;

    /// <summary>The other station of a pair, where the question is not about both; the note that may be wrong.</summary>
    private string Partner(Suspect suspect) => Whose(suspect) + (!suspect.Seat.IsUnfound ? string.Empty : IsBeyond(suspect) ? ", in a box that nobody has found, farther on" : ", in a box that nobody has found");

    private static bool IsBeyond(Suspect suspect) => suspect.Seat.Beyond is { } last && last == suspect.Place;

    private string Whose(Suspect suspect) => suspect.Common is { } common ? $" (common {Say.Clipped(common)})"
        : suspect.Note is { } note ? $" ({note})"
        : !suspect.IsPair ? string.Empty
        : string.Concat(new[] { suspect.Station!, suspect.Other! }.Except(subject.Stations).Select(s => $", with {owner.View.Name(s)}"));
}
