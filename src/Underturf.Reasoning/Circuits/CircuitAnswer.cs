namespace Underturf.Reasoning;

/// <summary>What stations do when they are switched on together, computed from the wires and coils as noted, nothing broken.</summary>
/// <param name="Controller">Label of the controller.</param>
/// <param name="SupplyVolts">Open-circuit volts of the supply.</param>
/// <param name="TerminalVolts">Volts between terminal and common with the stations on.</param>
/// <param name="CommonAmperes">Current in the common at the controller.</param>
/// <param name="Stations">One for each station that is on.</param>
/// <param name="Runs">Every stretch of wire in use, from the controller outward.</param>
/// <param name="KirchhoffResidualAmperes">Largest imbalance of currents at a node.</param>
public sealed record CircuitAnswer(
    string Engine,
    string Book,
    string Controller,
    double SupplyVolts,
    double TerminalVolts,
    double CommonAmperes,
    IReadOnlyList<StationOnCircuit> Stations,
    IReadOnlyList<RunOnCircuit> Runs,
    double KirchhoffResidualAmperes);

/// <summary>One station that is on.</summary>
/// <param name="Ohms">Between terminal and common, alone, as an ohmmeter reads it.</param>
/// <param name="OhmsSpread">Standard deviation of that.</param>
/// <param name="Amperes">In its conductor at the controller, rms.</param>
/// <param name="Guessed">True where no cable is known and the run is an assumption.</param>
public sealed record StationOnCircuit(string Station, double Ohms, double OhmsSpread, double Amperes, bool Guessed, IReadOnlyList<ValveOnCircuit> Valves);

/// <summary>A valve's coil.</summary>
/// <param name="PullInVolts">Volts at the coil before any plunger moves.</param>
/// <param name="Volts">Volts at the coil as things settle.</param>
/// <param name="Does">"holds", "chatters" or "rests".</param>
public sealed record ValveOnCircuit(string Place, double PullInVolts, double Volts, double Amperes, string Does);

/// <summary>A stretch of wire.</summary>
/// <param name="LengthSpread">Standard deviation of the logarithm of its length.</param>
/// <param name="LostVolts">Difference of the volts between conductor and common at its ends, for the station that loses most; rms.</param>
/// <param name="FarVolts">Volts between conductor and common at its far end, for the station that has least there.</param>
public sealed record RunOnCircuit(string From, string To, double LengthMetres, double LengthSpread, string Wire, string Common, IReadOnlyList<string> Stations, double LostVolts, double FarVolts);
