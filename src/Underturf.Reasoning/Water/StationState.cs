using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>What may be the matter with a station while it runs.</summary>
/// <param name="Faults">Of the water; none for a sound one.</param>
/// <param name="Wiring">What the wiring makes of it.</param>
/// <param name="LogPrior">ln of its probability beforehand.</param>
internal sealed record StationState(IReadOnlyList<WaterFault> Faults, WiringState Wiring, double LogPrior)
{
    public bool IsSound => Faults.Count == 0 && Wiring is { Valves: 1, StaysShut: false };
}

/// <summary>How many valves a station opens, as the readings of its wires have it.</summary>
/// <param name="Valves">How many open together.</param>
/// <param name="StaysShut">None does.</param>
/// <param name="Probability">Of this.</param>
public sealed record WiringState(int Valves, bool StaysShut, double Probability)
{
    public static IReadOnlyList<WiringState> Sound { get; } = [new(1, false, 1)];
}
