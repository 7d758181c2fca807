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
        return here < 0 || there < 0 || path.Legs[here].Id != partner.Legs[there].Id ? null : Of(path, partner, here, there);
    }

    /// <summary>
    /// The same where the two are joined in a box that nobody has found, half way along the stretches by which both go on from a place: as far as that box they are one
    /// stretch. The first path's is the one that is cut.
    /// </summary>
    public static (StationPath Path, int PartnersEnd, int Cut)? Beyond(StationPath path, StationPath partner, string place)
    {
        if (Onward(path, place) is not (var own and >= 0) || Onward(partner, place) is not (var others and >= 0) || path.Legs[path.LegTo(place)].Id != partner.Legs[partner.LegTo(place)].Id)
        {
            return null;
        }

        return Of(CutPath.Of(path, own), CutPath.Of(partner, others), own, others) is { } both ? (both.Path, both.PartnersEnd, own) : null;
    }

    /// <summary>The stretch by which the first goes on from a place, where both do, each by one, so that they may meet again in a box that nobody has found.</summary>
    public static Leg? GoesOn(StationPath path, StationPath partner, string place) => Onward(path, place) is var onward and >= 0 && Onward(partner, place) >= 0 ? path.Legs[onward] : null;

    /// <summary>The place where the only stretch ends by which a station goes on from a place; nothing where there is none or several.</summary>
    public static string? Next(StationPath path, string place) => Onward(path, place) is var onward and >= 0 ? path.Legs[onward].To : null;

    /// <summary>The only stretch by which a station goes on from a place; -1 where there is none or several.</summary>
    private static int Onward(StationPath path, string place)
    {
        var (at, onward) = (path.LegTo(place), -1);
        for (var i = at + 1; i < path.Legs.Count; i++)
        {
            if (path.Legs[i].Parent == at)
            {
                if (onward >= 0)
                {
                    return -1;
                }

                onward = i;
            }
        }

        return onward;
    }

    /// <param name="here">The leg at whose far end the two are joined.</param>
    /// <param name="there">The same in the other path.</param>
    private static (StationPath Path, int PartnersEnd)? Of(StationPath path, StationPath partner, int here, int there)
    {
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
