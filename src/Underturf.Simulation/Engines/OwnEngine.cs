using Underturf.Networks.Wiring.HalfWave;
using Underturf.Quantities;

namespace Underturf.Simulation.Engines;

/// <summary>The solvers of <c>Underturf.Networks</c>: phasors where there is no diode, the time domain where there is one.</summary>
internal sealed class OwnEngine : ICircuitEngine
{
    public static OwnEngine Instance { get; } = new();

    public Outcome<double> Ohms(DiodeNetwork circuit, int red, int black, TestDrive? drive)
    {
        if (drive is { } meter)
        {
            var read = circuit.ReadOhms(red, black, meter);
            return read.Succeeded ? read.Value.Ohms : read.Problem!;
        }

        var reading = circuit.Wiring.Ohms(red, black);
        return reading.Succeeded ? reading.Value.Ohms : reading.Problem!;
    }

    public Outcome<double> Volts(DiodeNetwork circuit, int a, int b, FedMeter meter)
    {
        if (circuit.Diodes.Count > 0)
        {
            var solved = circuit.SolvePeriodic(meter.Hertz);
            return !solved.Succeeded ? solved.Problem!
                : solved.Value.VoltageBetween(a, b) is { Succeeded: true } wave ? Math.Abs(wave.Value.ShownBy(meter.Response))
                : 0;
        }

        var solution = circuit.Wiring.SolveAc(meter.Hertz);
        return !solution.Succeeded ? solution.Problem!
            : solution.Value.IsFloating(a) || solution.Value.IsFloating(b) ? 0
            : solution.Value.VoltageBetween(a, b) is { Succeeded: true } volts ? Sine(volts.Value.Magnitude, meter)
            : 0;
    }

    public Outcome<double> Amperes(DiodeNetwork circuit, int element, FedMeter meter)
    {
        if (circuit.Diodes.Count > 0)
        {
            var solved = circuit.SolvePeriodic(meter.Hertz);
            var wave = solved.Succeeded ? solved.Value.Current(element) : solved.Problem!;
            return wave.Succeeded ? Math.Abs(wave.Value.ShownBy(meter.Response)) : wave.Problem!;
        }

        var solution = circuit.Wiring.SolveAc(meter.Hertz);
        var amperes = solution.Succeeded ? solution.Value.Current(element) : solution.Problem!;
        return amperes.Succeeded ? Sine(amperes.Value.Magnitude, meter) : amperes.Problem!;
    }

    /// <summary>Every alternating response shows a sine's rms.</summary>
    private static double Sine(double rms, FedMeter meter) => meter.Response == MeterResponse.Direct ? 0 : rms;
}
