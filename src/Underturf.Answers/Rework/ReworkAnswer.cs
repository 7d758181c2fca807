using System.Text.Json.Serialization;
using Underturf.FieldLog;
using Underturf.Reasoning.Water;

namespace Underturf.Planning.Rework;

/// <summary>How every valve gets its own station, or why it does not.</summary>
/// <param name="Engine">Version of the program.</param>
/// <param name="Book">Version of the practice book.</param>
/// <param name="Money">What prices are in.</param>
/// <param name="Shared">Every shared station.</param>
/// <param name="Valves">Every valve that needs a conductor of its own, with what can be done about it.</param>
/// <param name="Spares">Conductors that carry nothing.</param>
/// <param name="Terminals">Terminals without a station, by controller.</param>
/// <param name="Cost">Of what was chosen, everything going well.</param>
/// <param name="Expected">Its price with what is tried in vain.</param>
/// <param name="Bound">No choice is expected to cost less.</param>
/// <param name="Steps">What to do, in order, a check after each station.</param>
/// <param name="Rows">The terminals as they will be.</param>
/// <param name="Numbers">Old numbers and new ones, those of earlier work included.</param>
/// <param name="Missing">What stands in the way of a station for every valve.</param>
public sealed record ReworkAnswer(
    string Engine,
    string Book,
    string Money,
    IReadOnlyList<SharedGroup> Shared,
    IReadOnlyList<ValveRework> Valves,
    IReadOnlyList<SpareInHand> Spares,
    IReadOnlyList<FreeTerminals> Terminals,
    CostSheet Cost,
    decimal Expected,
    decimal Bound,
    IReadOnlyList<ReworkStep> Steps,
    IReadOnlyList<TerminalRow> Rows,
    IReadOnlyList<NumberChange> Numbers,
    IReadOnlyList<string> Missing)
{
    /// <summary>Nothing is shared and no check is open.</summary>
    public bool IsDone => Valves.Count == 0 && Steps.Count == 0;

    /// <summary>True where the choice was proven to be the cheapest.</summary>
    public bool IsBest => Expected == Bound;
}

/// <summary>A shared station as it is and as it will be.</summary>
/// <param name="Station">Id.</param>
/// <param name="Number">What people call it.</param>
/// <param name="Needed">Conductors more that it needs: one less than its valves.</param>
/// <param name="Before">As it is.</param>
/// <param name="After">With the valves that stay on it.</param>
/// <param name="Minutes">Its run time as found; each valve keeps it, one after the other.</param>
public sealed record SharedGroup(string Station, string Number, Grade Grade, double Probability, int Count, double CountProbability, int Needed, Foreseen? Before, Foreseen? After, double? Minutes)
{
    /// <summary>What it gives as it is; nothing where no flow can be worked out.</summary>
    public PartFlow? WaterBefore { get; init; }

    /// <summary>What each valve gives alone, were its outlets as many as those of its fellows.</summary>
    public PartFlow? WaterAfter { get; init; }
}

/// <summary>What instruments will show, computed; a spread is a standard deviation.</summary>
/// <param name="Places">Places that water with it.</param>
/// <param name="Volts">At the coil that has least, before any plunger moves.</param>
/// <param name="WorstVolts">The same with the stations on that take most from it.</param>
/// <param name="Opens">Chance that its coil pulls in even then.</param>
public sealed record Foreseen(int Places, double Ohms, double OhmsSpread, double Amperes, double AmperesSpread, double Volts, double VoltsSpread, double WorstVolts, double WorstVoltsSpread, double NeedsVolts, double Opens, IReadOnlyList<string> Company);

/// <summary>A valve that needs a conductor of its own.</summary>
/// <param name="Station">Id of the station that it shares.</param>
/// <param name="Number">That station's number.</param>
/// <param name="Name">What it is called: "valve 2 of station 12".</param>
/// <param name="Joint">Where its wire leaves the others.</param>
/// <param name="Alternatives">What can be done, cheapest expected first.</param>
/// <param name="Terminal">The terminal that it gets; nothing where it stays.</param>
public sealed record ValveRework(string Station, string Number, string Name, string? Valve, string? Waters, string Joint, string JointName, double JointProbability, IReadOnlyList<Alternative> Alternatives, int Chosen, string Controller, int? Terminal)
{
    [JsonIgnore]
    public Alternative Choice => Alternatives[Chosen];
}

public enum RemedyKind
{
    /// <summary>Its conductor comes to the controller already.</summary>
    OwnConductor,

    /// <summary>A conductor that carries nothing.</summary>
    Spare,

    /// <summary>The same, and another beside the common.</summary>
    SpareAndCommon,

    /// <summary>The conductor and number of a station that waters nothing.</summary>
    Reclaim,

    /// <summary>A new cable.</summary>
    Pull,

    /// <summary>It stays with the others, on purpose.</summary>
    Keep,

    /// <summary>Signalling over two wires; for comparison only.</summary>
    TwoWire,
}

/// <summary>One thing that can be done for a valve.</summary>
/// <param name="Cost">If it goes well.</param>
/// <param name="Expected">Its price with the chance that it does not.</param>
/// <param name="Chance">That it goes well.</param>
/// <param name="Why">What speaks against it, or why it cannot be.</param>
public sealed record Alternative(RemedyKind Kind, string Say, CostSheet Cost, decimal Expected, double Chance, bool IsPossible, string? Why, Foreseen? After);

/// <summary>A conductor that carries nothing.</summary>
/// <param name="IsProven">End to end under load, to that place.</param>
/// <param name="UsedFor">The valve that gets it.</param>
public sealed record SpareInHand(string Wire, string Name, string? Place, bool IsProven, IReadOnlyList<string> Missing, string? UsedFor);

public sealed record FreeTerminals(string Controller, IReadOnlyList<int> Free);

/// <summary>A terminal as it will be.</summary>
public sealed record TerminalRow(string Controller, int Terminal, string Number, string Waters, double? Minutes, string? Was, bool IsNew);

/// <summary>A change of a number.</summary>
/// <param name="On">The day on which it was made; nothing where it is yet to be.</param>
public sealed record NumberChange(string Was, string Now, string? Waters, DateTimeOffset? On);

/// <summary>One instruction.</summary>
/// <param name="Expect">What must be seen; nothing where nothing is checked.</param>
/// <param name="Passed">Notes to be written when it is done, or when what was expected is seen.</param>
/// <param name="Failed">Notes to be written when it is not seen; empty where nothing is checked.</param>
public sealed record ReworkStep(string Say, string Where, string Place, decimal Minutes, string Caution, string? Expect, [property: JsonIgnore] IReadOnlyList<Fact> Passed, [property: JsonIgnore] IReadOnlyList<Fact> Failed)
{
    public bool IsCheck => Failed.Count > 0;

    /// <summary>Id of the station that is checked; nothing where the step is another.</summary>
    public string? Station { get; init; }

    /// <summary>What its check must show.</summary>
    public Foreseen? Foreseen { get; init; }
}
