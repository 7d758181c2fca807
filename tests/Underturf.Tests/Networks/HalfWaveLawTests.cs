using Underturf.Networks.Wiring;
using Underturf.Networks.Wiring.HalfWave;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>Laws that hold in any network with diodes, on invented random ones of any shape.</summary>
public sealed class HalfWaveLawTests
{
    private const double Hertz = 50;

    /// <summary>The imbalance that counts as none, as a share of the largest current.</summary>
    private const double Balanced = 1e-6;

    private static readonly Junction silicon = new(1e-9, 1.8, 300);

    public static TheoryData<ulong> Seeds => [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Charge_that_enters_a_node_leaves_it_within_a_period(ulong seed)
    {
        var (circuit, solution) = Solved(seed);
        var left = new double[circuit.Wiring.NodeCount];
        var most = 0.0;
        for (var e = 0; e < circuit.Wiring.ElementCount; e++)
        {
            var current = solution.Current(e).Value;
            left[circuit.Wiring.ElementAt(e).A] -= current.Average();
            left[circuit.Wiring.ElementAt(e).B] += current.Average();
            most = Math.Max(most, current.Rms());
        }

        Assert.InRange(solution.KirchhoffResidualAmperes, 0, Balanced * most);
        Assert.All(left, amperes => Assert.InRange(amperes, -Balanced * most, Balanced * most));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_diode_never_conducts_backwards_more_than_its_saturation_and_leak(ulong seed)
    {
        var (circuit, solution) = Solved(seed);
        foreach (var diode in circuit.Diodes)
        {
            var element = circuit.Wiring.ElementAt(diode.Element);
            var most = diode.Junction.SaturationAmperes + (1e-12 * -solution.VoltageBetween(element.A, element.B).Value.Least());
            Assert.True(solution.Current(diode.Element).Value.Least() >= -1.000001 * most);
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_average_volts_of_a_coil_are_its_ohms_times_its_average_amperes(ulong seed)
    {
        var (circuit, solution) = Solved(seed);
        for (var e = 0; e < circuit.Wiring.ElementCount; e++)
        {
            var element = circuit.Wiring.ElementAt(e);
            if (element.Kind == ElementKind.Coil)
            {
                var volts = solution.VoltageBetween(element.A, element.B).Value;
                Assert.Equal(element.Ohms * solution.Current(e).Value.Average(), volts.Average(), 1e-5 * (1e-3 + volts.Rms()));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void With_its_diodes_shorted_a_network_is_what_the_phasors_say(ulong seed)
    {
        var circuit = Random(seed);
        var shorted = circuit.Wiring;
        foreach (var diode in circuit.Diodes)
        {
            shorted = shorted.With(diode.Element, 0.05);
        }

        var periodic = new DiodeNetwork(shorted).SolvePeriodic(Hertz).Value;
        var phasors = shorted.SolveAc(Hertz).Value;
        var floor = 1e-7 * Enumerable.Range(0, shorted.ElementCount).Max(e => phasors.Current(e).Value.Magnitude);
        for (var e = 0; e < shorted.ElementCount; e++)
        {
            var current = periodic.Current(e).Value;
            var expected = phasors.Current(e).Value.Magnitude;
            Assert.Equal(expected, current.ShownBy(MeterResponse.TrueRms), (1e-5 * expected) + floor);
            Assert.Equal(expected, current.ShownBy(MeterResponse.MeanResponding), (1e-4 * expected) + floor);
            Assert.Equal(0, current.ShownBy(MeterResponse.Direct), (1e-5 * expected) + floor);
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Turning_every_diode_round_turns_every_average_round(ulong seed)
    {
        var forward = Random(seed);
        var (one, other) = (forward.SolvePeriodic(Hertz).Value, Random(seed, turned: true).SolvePeriodic(Hertz).Value);
        for (var e = 0; e < forward.Wiring.ElementCount - forward.Diodes.Count; e++)
        {
            var (there, back) = (one.Current(e).Value, other.Current(e).Value);
            Assert.Equal(there.Average(), -back.Average(), 1e-5 * (1e-6 + there.Rms()));
            Assert.Equal(there.Rms(), back.Rms(), 1e-5 * (1e-6 + there.Rms()));
        }
    }

    [Fact]
    public void The_same_network_gives_the_same_bits()
    {
        var (circuit, solution) = Solved(3);
        var again = Solved(3).Solution;
        for (var e = 0; e < circuit.Wiring.ElementCount; e++)
        {
            Assert.True(solution.Current(e).Value.Samples.SequenceEqual(again.Current(e).Value.Samples));
        }
    }

    private static (DiodeNetwork Circuit, PeriodicSolution Solution) Solved(ulong seed)
    {
        var circuit = Random(seed);
        return (circuit, circuit.SolvePeriodic(Hertz).Value);
    }

    private static DiodeNetwork Random(ulong seed, bool turned = false)
    {
        var random = new SeededGenerator(seed);
        var nodes = 4 + random.NextInt(8);
        var circuit = new DiodeNetwork(RandomWiring.Make(random, nodes, 3));
        for (var k = 0; k < 1 + (int)(seed % 4); k++)
        {
            var (a, step) = (random.NextInt(nodes), 1 + random.NextInt(nodes - 1));
            var b = (a + step) % nodes;
            circuit.AddDiode($"diode {k}", turned ? b : a, turned ? a : b, silicon, 0.05);
        }

        return circuit;
    }
}
