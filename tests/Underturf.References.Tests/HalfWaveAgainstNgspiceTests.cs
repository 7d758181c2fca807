using Underturf.Networks.Wiring.HalfWave;
using Underturf.Numerics;

using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>
/// Random shared conductors with half-wave devices against transients of ngspice: average, rms and rectified mean of every current and of the
/// voltages a technician reads. The project asks for 1 %; the floor is 1 % of a milliampere, or of the supply's volts for voltages.
/// </summary>
public sealed class HalfWaveAgainstNgspiceTests(ITestOutputHelper output)
{
    private const int Circuits = 80;
    private const int Periods = 16;
    private const double Hertz = 60;
    private const double Relative = 0.01;
    private const double AmperesFloor = 1e-5;
    private const double VoltsFloor = 0.01;

    private int compared;
    private double worst;

    [Fact]
    public void Every_average_rms_and_rectified_mean_agrees()
    {
        var random = new SeededGenerator(71);
        for (var n = 0; n < Circuits; n++)
        {
            var circuit = new HalfWaveCircuit(random);
            var reference = NgspiceTransient.Run(HalfWaveNetlist.Write(circuit.Circuit, circuit.Common, Hertz), Hertz, Periods).Value;
            var solution = circuit.Circuit.SolvePeriodic(Hertz).Value;
            Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-8);
            for (var e = 0; e < circuit.Circuit.Wiring.ElementCount; e++)
            {
                var element = circuit.Circuit.Wiring.ElementAt(e);
                if (!double.IsPositiveInfinity(element.Ohms))
                {
                    Compare(solution.Current(e).Value, reference, HalfWaveNetlist.Amperes(e), AmperesFloor, $"circuit {n}, amperes of {element.Name}");
                }
            }

            foreach (var node in new[] { circuit.Supply, circuit.AtController, circuit.InBox })
            {
                var volts = solution.VoltageBetween(node, circuit.Common);
                Compare(volts.Value, reference, HalfWaveNetlist.Volts(node), VoltsFloor, $"circuit {n}, volts at {circuit.Circuit.Wiring.NodeName(node)}");
            }
        }

        output.WriteLine($"ngspice, half-wave: {compared} averages, rms values and rectified means of {Circuits} circuits compared; worst {worst:P2} of the value above the floor.");
        Assert.True(compared > 30 * Circuits);
    }

    private void Compare(Waveform ours, NgspiceTransient reference, string vector, double floor, string what)
    {
        var scale = reference.Rms(vector);
        Assert.True(Math.Abs(scale - reference.Rms(vector, periodsAgo: 1)) <= (1e-3 * scale) + floor, $"{what}: the transient has not settled");
        Near(reference.Average(vector), ours.Average(), floor, $"{what}, average");
        Near(scale, ours.Rms(), floor, $"{what}, rms");
        Near(reference.AlternatingMean(vector), ours.AlternatingMean(), floor, $"{what}, rectified mean");
    }

    private void Near(double expected, double actual, double floor, string what)
    {
        var off = Math.Abs(expected - actual);
        Assert.True(off <= (Relative * Math.Abs(expected)) + floor, $"{what}: ngspice {expected}, ours {actual}");
        worst = Math.Max(worst, (off - floor) / Math.Abs(expected));
        compared++;
    }
}
