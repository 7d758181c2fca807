namespace Underturf.Reasoning.Diagnosis;

/// <summary>A weighted sum of shared unknowns.</summary>
internal readonly record struct Direction(int[] Shared, double[] Slopes);

/// <summary>What one reading says of a sum of shared unknowns, as a normal factor: precision tau, and nu, the precision times the mean.</summary>
internal readonly record struct Site(Direction Direction, double Tau, double Nu);
