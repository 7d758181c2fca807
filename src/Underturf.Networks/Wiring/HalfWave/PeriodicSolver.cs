using Underturf.Quantities;

namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>Goes on from rest until one period repeats the one before.</summary>
internal static class PeriodicSolver
{
    /// <summary>Steps of a period. The error of a sine is (2 pi / steps)^2 / 3 of its reactive volts.</summary>
    private const int Steps = 240;
    private const int MostPeriods = 400;

    /// <summary>Change of the coils' currents from one period to the next, as a share of the largest current.</summary>
    private const double Settled = 1e-8;

    internal static Outcome<PeriodicSolution> Solve(DiodeNetwork network, double hertz)
    {
        var stepper = new PeriodStepper(network, hertz, Steps);
        for (var period = 1; period <= MostPeriods; period++)
        {
            var start = stepper.State();
            if (!stepper.Run())
            {
                return new Problem("network", "has diodes whose currents are not found", "Give the wires and sources around the diodes their ohms");
            }

            if (Change(start, stepper.State()) <= Settled * stepper.Record.MostAmperes())
            {
                return new PeriodicSolution(network, hertz, period, stepper.Record);
            }
        }

        return new Problem(
            "network",
            $"does not repeat itself within {MostPeriods} periods",
            "Look for a coil that is joined to itself through next to no ohms, and give that loop its ohms");
    }

    private static double Change(double[] start, double[] end)
    {
        var most = 0.0;
        for (var k = 0; k < start.Length; k++)
        {
            most = Math.Max(most, Math.Abs(start[k] - end[k]));
        }

        return most;
    }
}
