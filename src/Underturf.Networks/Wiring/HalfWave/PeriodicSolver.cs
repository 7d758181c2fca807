using Underturf.Quantities;

namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>Goes on from rest until the network repeats itself.</summary>
internal static class PeriodicSolver
{
    /// <summary>Steps of a period. The error is that of the corners where diodes start and stop, about 1e-4 of the largest current.</summary>
    private const int Steps = 480;
    private const int MostPeriods = 1000;

    /// <summary>Change of the coils' currents from one period to the next that counts as none, as a share of the largest.</summary>
    private const double Settled = 1e-8;

    internal static Outcome<PeriodicSolution> Solve(DiodeNetwork network, double hertz)
    {
        var stepper = new PeriodStepper(network, hertz, Steps);
        return stepper.Run(MostPeriods * Steps, Settled) switch
        {
            < 0 => new Problem("network", "has diodes whose currents are not found", "Give the wires and sources around the diodes their ohms"),
            MostPeriods * Steps => new Problem(
                "network",
                $"does not repeat itself within {MostPeriods} periods",
                "Look for a coil that is joined to itself through next to no ohms, and give that loop its ohms"),
            var steps => new PeriodicSolution(network, hertz, (steps + Steps - 1) / Steps, stepper.Record),
        };
    }
}
