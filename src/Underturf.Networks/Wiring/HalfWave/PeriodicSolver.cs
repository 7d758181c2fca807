using Underturf.Quantities;

namespace Underturf.Networks.Wiring.HalfWave;

/// <summary>Goes on from rest until the network repeats itself, with a leap now and then where what is left dies away slowly.</summary>
internal sealed class PeriodicSolver
{
    /// <summary>Steps of a period. The error is that of the corners where diodes start and stop, about 1e-4 of the largest current.</summary>
    private const int Steps = 480;
    private const int MostPeriods = 1000;

    /// <summary>What may be left to die away, as a share of the largest current.</summary>
    private const double Left = 1e-7;

    /// <summary>Least change asked for, as a share of that; below it rounding and Newton's last step are seen.</summary>
    private const double Finest = 1e-4;

    /// <summary>Periods between leaps, so that only the slowest part of the change is left to leap by.</summary>
    private const int Rest = 6;

    private readonly PeriodStepper stepper;
    private readonly double mostChange;
    private double[] change = [];
    private int sinceLeap;

    /// <summary>With p at most left of a change after a period, the changes to come add up to p / (1 - p) of the last one or less.</summary>
    private PeriodicSolver(PeriodStepper stepper)
    {
        this.stepper = stepper;
        mostChange = Left * Math.Max(Finest, 1 - stepper.PeriodRatio);
    }

    internal static Outcome<PeriodicSolution> Solve(DiodeNetwork network, double hertz)
    {
        var solver = new PeriodicSolver(new PeriodStepper(network, hertz, Steps));
        for (var period = 1; period <= MostPeriods; period++)
        {
            switch (solver.Next())
            {
                case PeriodEnd.Unsolved:
                    return new Problem("network", "has diodes whose currents are not found", "Give the wires and sources around the diodes their ohms");
                case PeriodEnd.Repeats:
                    return new PeriodicSolution(network, hertz, period, solver.stepper.Record);
            }
        }

        return new Problem(
            "network",
            $"does not repeat itself within {MostPeriods} periods",
            "Look for a coil that is joined to itself through next to no ohms, and give that loop its ohms");
    }

    private PeriodEnd Next()
    {
        var start = stepper.State();
        var end = stepper.Run(sinceLeap == 0 ? null : mostChange);
        if (end != PeriodEnd.Complete)
        {
            return end;
        }

        sinceLeap++;
        var state = stepper.State();
        double[] now = [.. state.Zip(start, (after, before) => after - before)];
        var ratio = sinceLeap > 1 ? Dot(now, change) / Dot(change, change) : 0;
        change = now;
        if (now.All(amperes => Math.Abs(amperes) <= mostChange * stepper.MostAmperes))
        {
            return PeriodEnd.Repeats;
        }

        Leap(state, ratio);
        return PeriodEnd.Complete;
    }

    /// <summary>If each change is the one before times the ratio, takes those to come up at once (Aitken's extrapolation; from memory).</summary>
    private void Leap(double[] state, double ratio)
    {
        if (sinceLeap >= Rest && ratio is > 0.3 and < 1)
        {
            stepper.Restart([.. state.Zip(change, (amperes, last) => amperes + (last * ratio / (1 - ratio)))]);
            sinceLeap = 0;
        }
    }

    private static double Dot(double[] one, double[] other) => one.Zip(other, (a, b) => a * b).Sum();
}
