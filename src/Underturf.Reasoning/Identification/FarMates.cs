using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Reasoning.Identification;

/// <summary>What an end carries by what it is joined to in other boxes: along its conductor to the far end, through the joint there, and on.</summary>
internal sealed class FarMates(PropertyView view)
{
    /// <summary>What is said there.</summary>
    /// <param name="ByColour">True where a conductor was followed by cable and colour, not by a far end that was noted.</param>
    internal sealed record Told(string? Station, bool Common, bool ByColour);

    /// <returns>Nothing where the conductor is not known to lead anywhere that tells.</returns>
    public Told? Of(string end) => view.Ends.GetValueOrDefault(end) is { } fact ? Along(end, fact, [end], byColour: false) : null;

    private Told? Along(string end, EndFact fact, HashSet<string> seen, bool byColour)
    {
        var noted = fact.FarEnd is { } other && view.Identity.Of(other) is var id && view.Ends.ContainsKey(id) ? id : null;
        return (noted ?? SameConductor(end, fact)) is { } far && seen.Add(far) ? Through(far, seen, byColour || noted is null) : null;
    }

    private Told? Through(string far, HashSet<string> seen, bool byColour)
    {
        var place = view.Identity.Of(view.Ends[far].Place);
        var joint = BoxCard.JointsAt(view, place).FirstOrDefault(j => j.Ends.Any(e => e.Id == far));
        var here = joint?.Ends.Select(e => (e.Id, Fact: view.Ends[e.Id])).ToList() ?? [];
        return here.Select(e => e.Fact).Select(f => f.Station is { } station ? new Told(view.Identity.Of(station), false, byColour) : f.Common == true ? new Told(null, true, byColour) : null).FirstOrDefault(t => t is not null)
            ?? here.Where(e => e.Id != far && seen.Add(e.Id)).Select(e => Along(e.Id, e.Fact, seen, byColour)).FirstOrDefault(t => t is not null);
    }

    /// <summary>The one end elsewhere in the same cable with the same colour, where no other end of that cable has it at either place.</summary>
    private string? SameConductor(string end, EndFact fact)
    {
        if (fact.Cable is not { } cable || fact.Colour is not { } colour)
        {
            return null;
        }

        var alike = view.Ends.Where(e => e.Value.Cable is { } its && view.Identity.Of(its) == view.Identity.Of(cable) && string.Equals(e.Value.Colour?.Trim(), colour.Trim(), StringComparison.OrdinalIgnoreCase)).ToList();
        return alike.Count == 2 && alike.Select(e => view.Identity.Of(e.Value.Place)).Distinct().Count() == 2 ? alike.Single(e => e.Key != end).Key : null;
    }
}
