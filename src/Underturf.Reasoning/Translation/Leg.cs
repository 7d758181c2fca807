using Underturf.Quantities;

namespace Underturf.Reasoning.Translation;

/// <summary>A stretch of wire between two places, with the station's conductor and the common in it.</summary>
/// <param name="Id">The cable's id, or a made-up one where nobody noted a cable.</param>
/// <param name="LogSpread">Standard deviation of the logarithm of the length.</param>
/// <param name="Parent">Index of the leg before it in the same path; -1 at the controller.</param>
/// <param name="GaugeLogSpread">Standard deviation of the logarithm of its ohms for a metre; 0 where its gauge is noted.</param>
public sealed record Leg(
    string Id,
    string From,
    string To,
    double LengthMetres,
    double LogSpread,
    WireSize StationSize,
    WireSize CommonSize,
    int Parent,
    double GaugeLogSpread = 0)
{
    public LegKey Key => new(Id, To);

    /// <summary>Standard deviation of the logarithm of its ohms: length and gauge.</summary>
    public double OhmsLogSpread => double.Hypot(LogSpread, GaugeLogSpread);
}

/// <summary>A leg of wire, whichever station's path it is seen in.</summary>
public readonly record struct LegKey(string Id, string To);

/// <summary>A valve at the end of a path.</summary>
/// <param name="Valve">Its id; nothing where nobody has found it.</param>
/// <param name="Place">The box it sits in, or where its wire was last seen.</param>
/// <param name="Leg">Index of the leg that ends there.</param>
/// <param name="NotedOhms">Ohms noted for its coil.</param>
/// <param name="Coil">Names its coil among those of the property.</param>
public sealed record ValveEnd(string? Valve, string Place, int Leg, double? NotedOhms, string Coil);

/// <summary>The wires of one station from the controller to its valves: a tree of legs, parents before children.</summary>
/// <param name="Station">Its id; that of the valve or place for the path of a master valve.</param>
/// <param name="Guessed">True where no cable is known and the run is an assumption.</param>
/// <param name="Common">Label of the common by which it returns: a conductor of its own from the terminal strip outward; nothing for the one usual common.</param>
public sealed record StationPath(string Station, string Controller, IReadOnlyList<Leg> Legs, IReadOnlyList<ValveEnd> Valves, bool Guessed, string? Common = null)
{
    /// <summary>The last leg at whose far end the other path passes too; nothing where the two never meet.</summary>
    public Leg? LastMeeting(StationPath other) => Legs.LastOrDefault(leg => other.LegTo(leg.To) >= 0);

    /// <summary>The index of a leg, or -1.</summary>
    public int IndexOf(LegKey key)
    {
        for (var i = 0; i < Legs.Count; i++)
        {
            if (Legs[i].To == key.To && Legs[i].Id == key.Id)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>Whether current for the end of one leg passes the end of another, or both are the same.</summary>
    public bool IsBehind(int leg, int before)
    {
        while (leg > before)
        {
            leg = Legs[leg].Parent;
        }

        return leg == before;
    }

    /// <summary>The index of the leg that ends at a place, or -1.</summary>
    public int LegTo(string place)
    {
        for (var i = 0; i < Legs.Count; i++)
        {
            if (Legs[i].To == place)
            {
                return i;
            }
        }

        return -1;
    }
}
