namespace Underturf.Reasoning.Water;

/// <summary>What a station gives with some of the valves that it runs, nothing broken; a spread is a standard deviation.</summary>
/// <param name="OutletPascals">Least at its outlets.</param>
/// <param name="Metered">True where its flow with all of them was read at the meter.</param>
public sealed record PartFlow(double CubicMetresPerSecond, double SpreadCubicMetresPerSecond, double OutletPascals, double OutletSpreadPascals, bool Metered);
