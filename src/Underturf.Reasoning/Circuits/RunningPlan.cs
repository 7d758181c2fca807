using Underturf.FieldLog;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Circuits;

/// <summary>What is on at one controller, and what is on with it.</summary>
/// <param name="Master">Path of the master valve; nothing where there is none.</param>
/// <param name="Relay">The pump's relay, where one is fitted.</param>
internal sealed record RunningPlan(IReadOnlyList<StationPath> Stations, StationPath? Master, PumpRelay? Relay, Supply Supply, CoilLevel Level);
