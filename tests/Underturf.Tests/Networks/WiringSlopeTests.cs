using Underturf.Networks.Wiring;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>Exact slopes against central differences, on seeded random networks.</summary>
public sealed class WiringSlopeTests
{
    private const int Networks = 60;
    private const double Step = 1e-4;
    private const double MostVolts = 30;

    [Fact]
    public void Slopes_of_ohms_are_those_of_differences()
    {
        var random = new SeededGenerator(31);
        for (var n = 0; n < Networks; n++)
        {
            var network = RandomWiring.Make(random, 3 + random.NextInt(10), random.NextInt(8), withSource: false);
            var (a, b) = (0, 1 + random.NextInt(network.NodeCount - 1));
            var reading = network.Ohms(a, b).Value;
            for (var e = 0; e < network.ElementCount; e++)
            {
                Check(network, e, v => v.Ohms(a, b).Value.Ohms, reading.Sensitivity(e).Value, reading.Ohms);
            }
        }
    }

    [Fact]
    public void The_slope_of_a_perfect_joint_is_that_of_its_first_milliohm()
    {
        var random = new SeededGenerator(32);
        for (var n = 0; n < Networks; n++)
        {
            var network = RandomWiring.Make(random, 4 + random.NextInt(10), random.NextInt(8), withSource: false, joints: 0.3);
            var (a, b) = (0, 1 + random.NextInt(network.NodeCount - 1));
            var reading = network.Ohms(a, b).Value;
            for (var e = 0; e < network.ElementCount; e++)
            {
                if (network.ElementAt(e).Ohms == 0)
                {
                    var difference = (network.With(e, 1e-6).Ohms(a, b).Value.Ohms - reading.Ohms) / 1e-6;
                    Assert.Equal(difference, reading.Sensitivity(e).Value, 1e-3);
                }
            }
        }
    }

    [Fact]
    public void Slopes_of_volts_and_amperes_are_those_of_differences()
    {
        var random = new SeededGenerator(33);
        for (var n = 0; n < Networks; n++)
        {
            var network = RandomWiring.Make(random, 3 + random.NextInt(10), random.NextInt(8), joints: 0.1);
            var solution = network.SolveAc(60).Value;
            var b = 1 + random.NextInt(network.NodeCount - 1);
            var volts = solution.VoltsReading(0, b).Value;
            var clamped = Clamped(network, solution, random);
            var amperes = solution.AmperesReading(clamped).Value;
            for (var e = 0; e < network.ElementCount; e++)
            {
                if (network.ElementAt(e).Ohms > 0)
                {
                    CheckIf(volts, network, e, v => v.SolveAc(60).Value.VoltageBetween(0, b).Value.Magnitude, MostVolts);
                    var most = MostVolts / network.ElementAt(clamped).Ohms;
                    CheckIf(amperes, network, e, v => v.SolveAc(60).Value.Current(clamped).Value.Magnitude, most);
                }
            }
        }
    }

    [Fact]
    public void A_closed_form_slope_is_met_to_rounding()
    {
        // Exact: V = 26 Z/(1 + Z) with real Z = 24 (no inductance), so dV/dZ = 26/(1 + Z)^2, dV/dr = -26 Z/(1 + Z)^2; I = 26/25.
        var network = new WiringNetwork();
        var (hot, common) = (network.Node("hot"), network.Node("common"));
        var source = network.AddSource("supply", hot, common, 26, 1);
        var coil = network.AddCoil("coil", hot, common, 24, 0);
        var solution = network.SolveAc(60).Value;
        var volts = solution.VoltsReading(hot, common).Value;

        Assert.Equal(26.0 / 625, volts.Sensitivity(coil).Value, 1e-15);
        Assert.Equal(-26 * 24.0 / 625, volts.Sensitivity(source).Value, 1e-14);
        Assert.Equal(-26.0 / 625, solution.AmperesReading(coil).Value.Sensitivity(source).Value, 1e-15);
        Assert.Equal(0, volts.SensitivityToHenries(coil).Value, 1e-15);
    }

    private static int Clamped(WiringNetwork network, AcSolution solution, SeededGenerator random)
    {
        for (var e = random.NextInt(network.ElementCount); ; e = (e + 1) % network.ElementCount)
        {
            if (network.ElementAt(e).Ohms > 0 && solution.Current(e).Value.Magnitude > 0)
            {
                return e;
            }
        }
    }

    private static void CheckIf(AcReading reading, WiringNetwork network, int e, Func<WiringNetwork, double> read, double scale)
    {
        if (reading.Magnitude < 1e-9)
        {
            return;
        }

        Check(network, e, read, reading.Sensitivity(e).Value, scale);
        var henries = network.ElementAt(e).Henries;
        if (henries > 0)
        {
            var d = Step * henries;
            var difference = (read(network.WithHenries(e, henries + d)) - read(network.WithHenries(e, henries - d))) / (2 * d);
            Near(difference, reading.SensitivityToHenries(e).Value, henries, scale);
        }
    }

    private static void Check(WiringNetwork network, int e, Func<WiringNetwork, double> read, double slope, double scale)
    {
        var ohms = network.ElementAt(e).Ohms;
        var d = Step * ohms;
        var difference = (read(network.With(e, ohms + d)) - read(network.With(e, ohms - d))) / (2 * d);
        Near(difference, slope, ohms, scale);
    }

    /// <summary>
    /// A central difference loses 1e-8 to curvature, and over the step the rounding of the reading: 3e-13 of the largest voltage or current.
    /// </summary>
    private static void Near(double difference, double slope, double value, double scale) =>
        Assert.Equal(difference, slope, (1e-7 * Math.Abs(slope)) + (3e-13 * scale / (Step * value)));
}
