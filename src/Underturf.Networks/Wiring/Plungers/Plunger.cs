namespace Underturf.Networks.Wiring;

/// <summary>How the plunger of a valve's coil stands.</summary>
public enum Plunger
{
    /// <summary>Too few volts to move it.</summary>
    Rests,

    /// <summary>It moves and cannot stay: enough volts to lift or to start, not enough to pull in and keep.</summary>
    Chatters,

    /// <summary>Pulled in, its inductance that of the closed gap.</summary>
    Holds,
}
