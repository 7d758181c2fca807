using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>Checks, factors and solves a network in the steady state.</summary>
internal static class AcSolver
{
    internal static Outcome<AcSolution> Solve(WiringNetwork network, double hertz)
    {
        if (WiringCheck.BeforeAc(network, hertz) is { } problem)
        {
            return problem;
        }

        var factor = new AcFactor(network, hertz);
        return new AcSolution(factor, new AcState(factor, SeriesVolts(factor.Topology, network)));
    }

    /// <summary>Each source's volts, less what contracted ideal sources already put between the element's ends.</summary>
    private static double[] SeriesVolts(Topology topology, WiringNetwork network)
    {
        var volts = new double[network.ElementCount];
        for (var e = 0; e < volts.Length; e++)
        {
            var ends = topology.Contraction.Offset(network.Layout.A[e]) - topology.Contraction.Offset(network.Layout.B[e]);
            volts[e] = topology.Finite[e] ? network.Driving[e] - ends : 0;
        }

        return volts;
    }
}
