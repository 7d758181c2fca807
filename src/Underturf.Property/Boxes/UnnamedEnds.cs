namespace Underturf.Property;

/// <summary>Conductor ends of which nothing says what they carry.</summary>
public static class UnnamedEnds
{
    /// <summary>Places that have such ends, in the order people count; at a controller ends are named by its terminals.</summary>
    public static IReadOnlyList<string> Places(PropertyView view) =>
    [
        .. view.Ends.Values.Select(end => view.Identity.Of(end.Place)).Distinct()
            .Where(place => !view.Controllers.ContainsKey(place) && BoxCard.JointsAt(view, place).Any(joint => joint.Ends.Count > 0 && joint.Ends.All(end => end.Carries is null && view.Ends[end.Id].FarEnd is null)))
            .OrderBy(view.Name, NaturalOrder.Instance).ThenBy(place => place, StringComparer.Ordinal),
    ];
}
