namespace Underturf.Networks.Hydraulics;

/// <summary>When a solution is good enough.</summary>
/// <param name="FlowChangeTolerance">Sum of the last changes of all flows, as a share of the sum of all flows.</param>
/// <param name="MostRounds">After so many it is given up, and the network named as not settling.</param>
public readonly record struct SolveSettings(double FlowChangeTolerance, int MostRounds)
{
    /// <summary>As fine as rounding lets it be.</summary>
    public static SolveSettings Fine { get; } = new(1e-9, 200);
}
