using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Valves that nobody has found: each is taken to be where its wire was last seen, and may lie farther on.</summary>
internal static class UnseenValves
{
    /// <summary>Whether a valve of the path may lie farther on than it is taken to.</summary>
    public static bool MayLieOn(this StationPath path, ValveEnd valve) => valve.Valve is null && !path.Guessed;

    /// <summary>The index of the valve that lies farther on with its cable; -1 where the cable does not end a way of the station, or its valve was found.</summary>
    public static int ValveBeyond(this StationPath path, LegKey cable)
    {
        var valve = path.Valves.Count - 1;
        while (valve >= 0 && !(path.Legs[path.Valves[valve].Leg].Key == cable && path.MayLieOn(path.Valves[valve])))
        {
            valve--;
        }

        return valve;
    }

    /// <summary>The leg by which a valve that nobody found was followed to a place and no farther; -1 where there is none.</summary>
    public static int LegBefore(this StationPath path, string last)
    {
        foreach (var valve in path.Valves)
        {
            if (path.MayLieOn(valve) && path.Legs[valve.Leg].To == last)
            {
                return valve.Leg;
            }
        }

        return -1;
    }

    /// <summary>Whether what is wrong with a run, or other than noted, is so for a station: the way on from its end, or the run itself.</summary>
    public static bool IsOf(this StationPath path, Suspect run) =>
        run.Fault.MoreMetres is null ? path.IndexOf(run.Leg!.Value) >= 0 : path.ValveBeyond(run.Leg!.Value) >= 0;
}
