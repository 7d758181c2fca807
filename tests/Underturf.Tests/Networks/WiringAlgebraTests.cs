using Underturf.Networks.Wiring;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>Laws that hold for every network, on seeded random ones.</summary>
public sealed class WiringAlgebraTests
{
    private const int Networks = 300;

    [Fact]
    public void Every_element_obeys_ohm_and_every_node_kirchhoff()
    {
        var random = new SeededGenerator(21);
        for (var n = 0; n < Networks; n++)
        {
            var network = RandomWiring.Make(random, 2 + random.NextInt(20), random.NextInt(12), joints: 0.15);
            var solution = network.SolveAc(60).Value;
            var (re, im) = (new double[network.NodeCount], new double[network.NodeCount]);
            for (var e = 0; e < network.ElementCount; e++)
            {
                var element = network.ElementAt(e);
                var current = solution.Current(e).Value;
                var volts = solution.VoltageBetween(element.A, element.B).Value;
                var x = 2 * Math.PI * 60 * element.Henries;
                Assert.Equal(volts.Real - element.Volts, (element.Ohms * current.Real) - (x * current.Imaginary), 1e-10);
                Assert.Equal(volts.Imaginary, (element.Ohms * current.Imaginary) + (x * current.Real), 1e-10);
                re[element.A] += current.Real;
                im[element.A] += current.Imaginary;
                re[element.B] -= current.Real;
                im[element.B] -= current.Imaginary;
            }

            Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-9);
            Assert.All(re.Concat(im), sum => Assert.Equal(0, sum, 1e-9));
        }
    }

    [Fact]
    public void Readings_are_the_same_with_the_leads_exchanged()
    {
        var random = new SeededGenerator(22);
        for (var n = 0; n < Networks; n++)
        {
            var network = RandomWiring.Make(random, 2 + random.NextInt(20), random.NextInt(12), withSource: false, joints: 0.1);
            var (a, b) = (random.NextInt(network.NodeCount), random.NextInt(network.NodeCount));
            var reading = network.Ohms(a, b).Value;

            Assert.InRange(reading.KirchhoffResidualAmperes, 0, 1e-11);
            Assert.Equal(reading.Ohms, network.Ohms(b, a).Value.Ohms, 1e-12 * reading.Ohms);
        }
    }

    [Fact]
    public void Ohms_times_a_factor_read_that_much_more()
    {
        var random = new SeededGenerator(23);
        for (var n = 0; n < Networks; n++)
        {
            var network = RandomWiring.Make(random, 2 + random.NextInt(20), random.NextInt(12), withSource: false);
            var tenfold = network.With([.. Enumerable.Range(0, network.ElementCount).Select(e => 10 * network.ElementAt(e).Ohms)]);
            var (a, b) = (random.NextInt(network.NodeCount), random.NextInt(network.NodeCount));
            var expected = 10 * network.Ohms(a, b).Value.Ohms;

            Assert.Equal(expected, tenfold.Ohms(a, b).Value.Ohms, 1e-12 * expected);
        }
    }

    [Fact]
    public void A_series_chain_adds_and_a_bundle_adds_its_inverses()
    {
        var random = new SeededGenerator(24);
        for (var n = 0; n < Networks; n++)
        {
            var ohms = Enumerable.Range(0, 1 + random.NextInt(8)).Select(_ => RandomWiring.Ohms(random)).ToArray();
            var (chain, bundle) = (new WiringNetwork(), new WiringNetwork());
            for (var k = 0; k < ohms.Length; k++)
            {
                chain.AddResistor($"r{k}", chain.Node($"{k}"), chain.Node($"{k + 1}"), ohms[k]);
                bundle.AddResistor($"r{k}", bundle.Node("a"), bundle.Node("b"), ohms[k]);
            }

            Assert.Equal(1, chain.Ohms(0, ohms.Length).Value.Ohms / ohms.Sum(), 1e-14);
            Assert.Equal(1, bundle.Ohms(0, 1).Value.Ohms * ohms.Sum(r => 1 / r), 1e-14);
        }
    }

    [Fact]
    public void More_ohms_anywhere_never_read_less()
    {
        // Rayleigh's monotonicity law.
        var random = new SeededGenerator(25);
        for (var n = 0; n < Networks; n++)
        {
            var network = RandomWiring.Make(random, 3 + random.NextInt(12), random.NextInt(8), withSource: false);
            var e = random.NextInt(network.ElementCount);
            var (a, b) = (random.NextInt(network.NodeCount), random.NextInt(network.NodeCount));
            var before = network.Ohms(a, b).Value.Ohms;

            Assert.True(network.With(e, 2 * network.ElementAt(e).Ohms).Ohms(a, b).Value.Ohms >= before * (1 - 1e-13));
            Assert.True(network.With(e, double.PositiveInfinity).Ohms(a, b).Value.Ohms >= before * (1 - 1e-13));
            Assert.True(network.With(e, 0).Ohms(a, b).Value.Ohms <= before * (1 + 1e-13));
        }
    }

    [Fact]
    public void A_variant_reads_as_a_network_built_anew()
    {
        var random = new SeededGenerator(26);
        for (var n = 0; n < Networks; n++)
        {
            var network = RandomWiring.Make(random, 3 + random.NextInt(12), random.NextInt(8));
            network.SolveAc(60);
            double[] choices = [0, double.PositiveInfinity, 0.5, 1e6];
            var variant = network.With(1 + random.NextInt(network.ElementCount - 1), choices[random.NextInt(4)]);
            var anew = Rebuild(variant);
            var first = variant.SolveAc(60).Value;
            var second = anew.SolveAc(60).Value;
            for (var node = 1; node < network.NodeCount; node++)
            {
                Assert.Equal(second.IsFloating(node), first.IsFloating(node));
                var (one, other) = (first.VoltageBetween(0, node), second.VoltageBetween(0, node));
                Assert.Equal(other.Succeeded, one.Succeeded);
                Assert.True(!one.Succeeded || Math.Abs(one.Value.Magnitude - other.Value.Magnitude) < 1e-11);
            }
        }
    }

    private static WiringNetwork Rebuild(WiringNetwork network)
    {
        var anew = new WiringNetwork();
        for (var node = 0; node < network.NodeCount; node++)
        {
            anew.Node(network.NodeName(node));
        }

        for (var k = 0; k < network.ElementCount; k++)
        {
            var e = network.ElementAt(k);
            _ = e.Kind switch
            {
                ElementKind.Source => anew.AddSource(e.Name, e.A, e.B, e.Volts, e.Ohms),
                ElementKind.Coil => anew.AddCoil(e.Name, e.A, e.B, e.Ohms, e.Henries),
                _ => anew.AddResistor(e.Name, e.A, e.B, e.Ohms),
            };
        }

        return anew;
    }
}
