namespace Underturf.Networks.Hydraulics;

/// <summary>What an element or an outlet does in a solution.</summary>
public enum ElementState
{
    /// <summary>Lets through what comes.</summary>
    Open,

    /// <summary>Shut, or dry because nothing joins it to a supply.</summary>
    Closed,

    /// <summary>Open, but the pressure would push the wrong way.</summary>
    HeldShut,

    /// <summary>Lets through its most.</summary>
    Limiting,

    /// <summary>Holds the pressure behind it.</summary>
    Regulating,
}
