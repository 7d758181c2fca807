using System.Text.Json.Serialization;
using Underturf.FieldLog;

namespace Underturf.Reasoning;

/// <summary>
/// What stations do when they are switched on together, computed from the wires and coils as noted, nothing broken. A spread is a
/// standard deviation, with every plunger as it is said to be.
/// </summary>
/// <param name="Controller">Label of the controller.</param>
/// <param name="Supply">The transformer and what is taken from it.</param>
/// <param name="Commons">Each common that leaves the controller.</param>
/// <param name="Stations">One for each station that is on.</param>
/// <param name="Master">The master valve that is on with them; nothing where none is noted.</param>
/// <param name="Relay">The pump's relay; nothing where none is noted.</param>
/// <param name="Sensor">The sensor in the common, taken as closed; nothing where none is noted.</param>
/// <param name="Runs">Every stretch of wire in use, from the controller outward.</param>
/// <param name="Warnings">What would not do, in words.</param>
/// <param name="KirchhoffResidualAmperes">Largest imbalance of currents at a node.</param>
public sealed record CircuitAnswer(
    string Engine,
    string Book,
    string Controller,
    SupplyOnCircuit Supply,
    IReadOnlyList<CommonOnCircuit> Commons,
    IReadOnlyList<StationOnCircuit> Stations,
    MasterOnCircuit? Master,
    RelayOnCircuit? Relay,
    string? Sensor,
    IReadOnlyList<RunOnCircuit> Runs,
    IReadOnlyList<string> Warnings,
    double KirchhoffResidualAmperes);

/// <summary>The transformer.</summary>
/// <param name="OpenVolts">With nothing running.</param>
/// <param name="Ohms">Inside it.</param>
/// <param name="TerminalVolts">Between terminal and common with all on.</param>
/// <param name="Amperes">Taken from it.</param>
/// <param name="VoltAmperes">Terminal volts times amperes.</param>
/// <param name="RatedVoltAmperes">What it may deliver.</param>
/// <param name="RatingNoted">False where the rating is the practice book's usual one.</param>
public sealed record SupplyOnCircuit(
    double OpenVolts,
    double OpenVoltsSpread,
    double Ohms,
    double TerminalVolts,
    double TerminalVoltsSpread,
    double Amperes,
    double AmperesSpread,
    double VoltAmperes,
    double VoltAmperesSpread,
    double RatedVoltAmperes,
    bool RatingNoted);

/// <summary>A common where it leaves the controller.</summary>
/// <param name="Common">Its label; "usual" for the one without.</param>
public sealed record CommonOnCircuit(string Common, double Amperes, double AmperesSpread);

/// <summary>One station that is on.</summary>
/// <param name="Common">Label of the common by which it returns; "usual" for the one without.</param>
/// <param name="Ohms">Between terminal and common, alone, as an ohmmeter reads it.</param>
/// <param name="Amperes">In its conductor at the controller, rms.</param>
/// <param name="Guessed">True where no cable is known and the run is an assumption.</param>
public sealed record StationOnCircuit(
    string Station,
    string Common,
    double Ohms,
    double OhmsSpread,
    double Amperes,
    double AmperesSpread,
    bool Guessed,
    IReadOnlyList<ValveOnCircuit> Valves)
{
    [JsonIgnore]
    public string Id { get; init; } = string.Empty;
}

/// <summary>The master valve, fed with every station.</summary>
/// <param name="Name">What people call the valve or its place.</param>
public sealed record MasterOnCircuit(string Name, bool Guessed, ValveOnCircuit Valve);

/// <summary>The pump's relay at the controller.</summary>
/// <param name="Ohms">Of its coil.</param>
public sealed record RelayOnCircuit(double Ohms, double Amperes, double AmperesSpread);

/// <summary>A valve's coil.</summary>
/// <param name="NeedsVolts">Volts that pull it in.</param>
/// <param name="PullInVolts">Volts at the coil before any plunger moves.</param>
/// <param name="Volts">Volts at the coil as things settle.</param>
/// <param name="Does">"holds", "chatters" or "rests".</param>
public sealed record ValveOnCircuit(
    string Place,
    double NeedsVolts,
    double PullInVolts,
    double PullInVoltsSpread,
    double Volts,
    double VoltsSpread,
    double Amperes,
    double AmperesSpread,
    string Does)
{
    /// <summary>Of its place: as noted, inferred where only its wire was seen there, unknown where nobody saw that either.</summary>
    [JsonConverter(typeof(JsonStringEnumConverter<Grade>))]
    public Grade Grade { get; init; }

    /// <summary>Chance that it lies there, where that is inferred; nothing where there is no plan to reckon with.</summary>
    public double? Probability { get; init; }

    /// <summary>What counts as there.</summary>
    public double? WithinMetres { get; init; }

    [JsonIgnore]
    public string PlaceId { get; init; } = string.Empty;
}

/// <summary>A stretch of wire.</summary>
/// <param name="Guessed">True where no cable is known and the run is an assumption.</param>
/// <param name="LengthSpread">Standard deviation of the logarithm of its length.</param>
/// <param name="Wire">Size of the conductors out.</param>
/// <param name="Back">Size of the conductors back.</param>
/// <param name="Commons">Labels of the commons in it; "usual" for the one without.</param>
/// <param name="Stations">Stations whose conductors run in it; the master valve by its name.</param>
/// <param name="LostVolts">Difference of the volts between conductor and common at its ends, for the station that loses most; rms.</param>
/// <param name="FarVolts">Volts between conductor and common at its far end, for the station that has least there.</param>
public sealed record RunOnCircuit(
    string From,
    string To,
    bool Guessed,
    double LengthMetres,
    double LengthSpread,
    string Wire,
    string Back,
    IReadOnlyList<string> Commons,
    IReadOnlyList<string> Stations,
    double LostVolts,
    double FarVolts);
