using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>A station's wires with another station's beyond the place where the two conductors are joined.</summary>
internal static class JoinedPath
{
    /// <returns>
    /// The tree of both, and the leg at whose far end the other's conductor ends; nothing where the two reach the place by different cables, so that the common
    /// makes a loop.
    /// </returns>
    public static (StationPath Path, int PartnersEnd)? Of(StationPath path, StationPath partner, string place)
    {
        var (here, there) = (path.LegTo(place), partner.LegTo(place));
        if (here < 0 || there < 0 || path.Legs[here].Id != partner.Legs[there].Id)
        {
            return null;
        }

        var (legs, moved) = (path.Legs.ToList(), new Dictionary<int, int> { [there] = here });
        for (var i = there + 1; i < partner.Legs.Count; i++)
        {
            if (moved.TryGetValue(partner.Legs[i].Parent, out var parent))
            {
                if (path.Legs.Any(l => l.Id == partner.Legs[i].Id && l.To == partner.Legs[i].To))
                {
                    return null;
                }

                moved[i] = legs.Count;
                legs.Add(partner.Legs[i] with { Parent = parent });
            }
        }

        var valves = partner.Valves.Where(v => moved.ContainsKey(v.Leg)).Select(v => v with { Leg = moved[v.Leg] });
        return (path with { Legs = legs, Valves = [.. path.Valves, .. valves] }, moved.GetValueOrDefault(partner.Legs.Count - 1, here));
    }
}
