using Underturf.Numerics;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>
/// Random shared conductors with half-wave devices against transients of ngspice: average, rms and rectified mean of every current and of the
/// voltages a technician reads.
/// </summary>
public sealed class HalfWaveAgainstNgspiceTests(ITestOutputHelper output)
{
    private const int Circuits = 80;
    private const int Periods = 16;
    private const double Hertz = 60;

    private readonly HalfWaveAgreement agreement = HalfWaveAgreement.OfOneConductor();

    [Fact]
    public void Every_average_rms_and_rectified_mean_agrees()
    {
        var random = new SeededGenerator(71);
        for (var n = 0; n < Circuits; n++)
        {
            Compare(new HalfWaveCircuit(random), $"circuit {n}");
        }

        output.WriteLine($"ngspice, half-wave: {agreement.Count} averages, rms values and rectified means of {Circuits} circuits compared; worst {agreement.WorstShare:P2} of the value above the floor.");
        Assert.Null(agreement.Disagreement);
        Assert.True(agreement.Count > 30 * Circuits);
    }

    private void Compare(HalfWaveCircuit circuit, string what)
    {
        var wiring = circuit.Circuit.Wiring;
        var reference = NgspiceTransient.Run(HalfWaveNetlist.Write(circuit.Circuit, circuit.Common, Hertz), Hertz, Periods).Value;
        var solution = circuit.Circuit.SolvePeriodic(Hertz).Value;
        Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-8);
        for (var e = 0; e < wiring.ElementCount; e++)
        {
            if (!double.IsPositiveInfinity(wiring.ElementAt(e).Ohms))
            {
                agreement.AddAmperes(solution.Current(e).Value, reference, HalfWaveNetlist.Amperes(e), $"{what}, amperes of {wiring.ElementAt(e).Name}");
            }
        }

        foreach (var node in new[] { circuit.Supply, circuit.AtController, circuit.InBox })
        {
            agreement.AddVolts(solution.VoltageBetween(node, circuit.Common).Value, reference, HalfWaveNetlist.Volts(node), $"{what}, volts at {wiring.NodeName(node)}");
        }
    }
}
