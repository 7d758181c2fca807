using Underturf.Networks.Wiring;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>Closed forms. Networks invented.</summary>
public sealed class WiringLawTests
{
    [Fact]
    public void A_wire_of_a_hundredth_ohm_keeps_its_digits_beside_a_leak_of_a_teraohm()
    {
        var network = new WiringNetwork();
        var (a, m, b) = (network.Node("a"), network.Node("m"), network.Node("b"));
        network.AddResistor("wire", a, m, 0.01);
        network.AddResistor("leak", m, b, 1e12);

        var reading = network.Ohms(a, b).Value;

        Assert.Equal(1e12 + 0.01, reading.Ohms, 1e-3);
        Assert.Equal(1, reading.Sensitivity(0).Value, 1e-9);
        Assert.Equal(0.01, network.Ohms(a, m).Value.Ohms, 1e-16);
        Assert.Equal(1e12, network.Ohms(m, b).Value.Ohms, 1e-3);
    }

    [Fact]
    public void A_parallel_leak_of_a_teraohm_takes_off_what_theory_says()
    {
        var network = new WiringNetwork();
        var (a, b) = (network.Node("a"), network.Node("b"));
        network.AddResistor("coil", a, b, 30);
        network.AddResistor("leak", a, b, 1e12);

        Assert.Equal(30 / (1 + 30e-12), network.Ohms(a, b).Value.Ohms, 1e-14);
    }

    [Fact]
    public void A_coil_on_a_source_draws_by_its_impedance()
    {
        var network = new WiringNetwork();
        var (hot, common) = (network.Node("hot"), network.Node("common"));
        var source = network.AddSource("supply", hot, common, 26, 1);
        var coil = network.AddCoil("coil", hot, common, 24, 0.1);

        var solution = network.SolveAc(60).Value;

        // Exact: I = 26 / |25 + j 2 pi 60 0.1|.
        var x = 2 * Math.PI * 60 * 0.1;
        Assert.Equal(26 / double.Hypot(25, x), solution.Current(coil).Value.Magnitude, 1e-13);
        Assert.Equal(26 * double.Hypot(24, x) / double.Hypot(25, x), solution.VoltageBetween(hot, common).Value.Magnitude, 1e-12);
        Assert.Equal(-solution.Current(coil).Value.Real, solution.Current(source).Value.Real, 1e-13);
        Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-12);
    }

    [Fact]
    public void An_ideal_source_holds_its_volts_and_its_current_follows_from_kirchhoff()
    {
        var network = new WiringNetwork();
        var (hot, joint, common) = (network.Node("hot"), network.Node("joint"), network.Node("common"));
        var source = network.AddSource("supply", hot, common, 24, 0);
        var splice = network.AddResistor("splice", hot, joint, 0);
        network.AddResistor("load", joint, common, 12);

        var solution = network.SolveAc(60).Value;

        Assert.Equal(24, solution.VoltageBetween(joint, common).Value.Real, 1e-14);
        Assert.Equal(-2, solution.Current(source).Value.Real, 1e-14);
        Assert.Equal(2, solution.Current(splice).Value.Real, 1e-14);
    }

    [Fact]
    public void A_ladder_of_extreme_ohms_reads_as_its_continued_fraction()
    {
        // Exact recursion r_s + 1 / (1 / r_p + 1 / rest): only sums of positive numbers, so it keeps its digits too.
        var random = new SeededGenerator(61);
        for (var n = 0; n < 200; n++)
        {
            var network = new WiringNetwork();
            var (common, end) = (network.Node("common"), network.Node("end"));
            var ohms = double.PositiveInfinity;
            for (var rung = 0; rung < 12; rung++)
            {
                var (series, shunt) = (Extreme(random), Extreme(random));
                var next = network.Node($"rung {rung}");
                network.AddResistor("shunt", end, common, shunt);
                network.AddResistor("series", end, next, series);
                ohms = series + (1 / ((1 / shunt) + (1 / ohms)));
                end = next;
            }

            Assert.Equal(1, network.Ohms(end, common).Value.Ohms / ohms, 1e-12);
        }
    }

    [Fact]
    public void Three_hundred_coils_on_one_common_obey_kirchhoff_and_reciprocity()
    {
        var random = new SeededGenerator(62);
        var network = RandomWiring.Make(random, nodes: 900, extra: 5);
        var dead = network.WithoutSources();

        Assert.InRange(network.SolveAc(60).Value.KirchhoffResidualAmperes, 0, 1e-9);
        for (var n = 0; n < 20; n++)
        {
            var (a, b) = (random.NextInt(900), random.NextInt(900));
            var ohms = dead.Ohms(a, b).Value.Ohms;
            Assert.Equal(ohms, dead.Ohms(b, a).Value.Ohms, 1e-11 * ohms);
        }
    }

    private static double Extreme(SeededGenerator random) => Math.Pow(10, -12 + (27 * random.NextDouble()));
}
