using Underturf.Networks.Wiring.HalfWave;
using Underturf.Numerics;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>
/// An ohmmeter on random shared conductors with half-wave devices, both polarities, against operating points of ngspice: test volts behind
/// ohms, and a current source as a diode range has. The drives are invented, in the range of such meters.
/// </summary>
public sealed class DiodeOhmmeterAgainstNgspiceTests(ITestOutputHelper output)
{
    private const int Circuits = 60;
    private const double Relative = 1e-3;
    private const double VoltsFloor = 1e-4;

    private int overRange;
    private int compared;

    [Fact]
    public void Volts_and_amperes_at_the_leads_agree_in_either_polarity()
    {
        var random = new SeededGenerator(72);
        for (var n = 0; n < Circuits; n++)
        {
            var circuit = new HalfWaveCircuit(random);
            var dead = circuit.Circuit.With(circuit.Circuit.Wiring.WithoutSources());
            var far = n % 2 == 0 ? circuit.AtController : circuit.InBox;
            foreach (var (red, black) in new[] { (far, circuit.Common), (circuit.Common, far) })
            {
                ThroughOhms(dead, red, black, 0.3 + (3 * random.NextDouble()), Math.Pow(10, 1 + (3 * random.NextDouble())), $"circuit {n}, red {red}");
                ByCurrent(dead, red, black, $"circuit {n}, red {red}");
            }
        }

        output.WriteLine($"ngspice, ohmmeter on diodes: {compared} readings of {Circuits} circuits compared, {overRange} over range in both.");
        Assert.True(compared > 3 * Circuits && overRange > 10);
    }

    private void ThroughOhms(DiodeNetwork dead, int red, int black, double volts, double ohms, string what)
    {
        var reference = Ngspice.Run($"{HalfWaveNetlist.Write(dead, black)}Vtest test 0 {SpiceText.Number(volts)}\nRtest test n{red} {SpiceText.Number(ohms)}\n", "op");
        var reading = dead.ReadOhms(red, black, TestDrive.ThroughOhms(volts, ohms, 1e5)).Value;
        Assert.InRange(reading.KirchhoffResidualAmperes, 0, 1e-8);
        var expected = reference[$"v(n{red})"].Real;
        Near(expected, reading.Volts, what);
        Near((volts - expected) / ohms, reading.Amperes, what);
        Assert.Equal(expected / ((volts - expected) / ohms) > 1e5, reading.IsOverRange);
    }

    private void ByCurrent(DiodeNetwork dead, int red, int black, string what)
    {
        const double TestAmperes = 1e-3;
        const double MostVolts = 2;
        var reference = Ngspice.Run($"{HalfWaveNetlist.Write(dead, black)}Itest 0 n{red} {TestAmperes}\nDtest n{red} lid xtest\nVlid lid 0 50\n.model xtest d\n", "op");
        var expected = reference[$"v(n{red})"].Real;
        var reading = dead.ReadOhms(red, black, TestDrive.ConstantCurrent(TestAmperes, MostVolts)).Value;
        Assert.InRange(reading.KirchhoffResidualAmperes, 0, 1e-8);
        Assert.Equal(expected > MostVolts, reading.IsOverRange);
        if (reading.IsOverRange)
        {
            overRange++;
            return;
        }

        Near(expected, reading.Volts, what);
        Near(expected / TestAmperes, reading.Ohms, what);
    }

    private void Near(double expected, double actual, string what)
    {
        compared++;
        Assert.True(Math.Abs(expected - actual) <= (Relative * Math.Abs(expected)) + VoltsFloor, $"{what}: ngspice {expected}, ours {actual}");
    }
}
