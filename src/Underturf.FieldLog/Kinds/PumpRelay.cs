using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Whether a controller has a relay that starts a pump, and the relay's ohms where somebody knows them.</summary>
public readonly record struct PumpRelay(bool Fitted, Resistance? Ohms);
