using Underturf.FieldLog;

namespace Underturf.Simulation;

/// <summary>A made-up property: what its technician noted, and what is really wrong.</summary>
public sealed record World(LogDocument Log, IReadOnlyList<TrueFault> Faults);
