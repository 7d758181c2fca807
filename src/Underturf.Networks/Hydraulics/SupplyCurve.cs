using Underturf.Quantities;

namespace Underturf.Networks.Hydraulics;

/// <summary>
/// What a point of connection gives: head at rest, falling with the flow as friction does, h = h0 - r Q^1.852 (the hydrant test of water
/// works, there as Q2 = Q1 (dp2 / dp1)^0.54; from memory).
/// </summary>
/// <param name="StaticMetres">Head over the gauge with nothing running.</param>
/// <param name="ResistancePerFlowFactor">r; zero for a supply that never sags.</param>
public readonly record struct SupplyCurve(double StaticMetres, double ResistancePerFlowFactor)
{
    /// <summary>From a gauge read twice: nothing running, and with a known flow running.</summary>
    /// <returns>The curve, or what makes the readings contradict each other.</returns>
    public static Outcome<SupplyCurve> FromTwoReadings(Water water, double staticPascals, double runningPascals, double runningCubicMetresPerSecond)
    {
        if (!(staticPascals > 0 && runningPascals >= 0 && runningCubicMetresPerSecond > 0))
        {
            return new Problem("supply", "has readings that cannot be", "Give static pressure, pressure while running and the flow then, all above zero");
        }

        if (runningPascals > staticPascals)
        {
            return new Problem("supply", "shows more pressure running than at rest", "Read both again, one soon after the other: the street may have changed between them");
        }

        var lost = (staticPascals - runningPascals) / water.PascalsPerMetre;
        return new SupplyCurve(staticPascals / water.PascalsPerMetre, lost / Math.Pow(runningCubicMetresPerSecond, HazenWilliams.FlowExponentNumber));
    }
}
