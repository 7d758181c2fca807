using Underturf.Networks.Wiring;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>Invented networks of any shape: a random tree with extra elements across it.</summary>
internal static class RandomWiring
{
    internal static WiringNetwork Make(SeededGenerator random, int nodes, int extra, bool withSource = true, double joints = 0)
    {
        var network = new WiringNetwork();
        for (var n = 0; n < nodes; n++)
        {
            network.Node($"n{n}");
        }

        if (withSource)
        {
            network.AddSource("supply", 0, 1, 20 + (10 * random.NextDouble()), Ohms(random));
            network.AddResistor("first", 0, 1, Ohms(random));
        }

        for (var n = 1; n < nodes; n++)
        {
            Add(network, random, $"tree {n}", n, random.NextInt(n), joints);
        }

        for (var k = 0; k < extra; k++)
        {
            Add(network, random, $"extra {k}", random.NextInt(nodes), random.NextInt(nodes), 0);
        }

        return network;
    }

    /// <summary>From 0.01 to 10,000 ohm, evenly in the logarithm.</summary>
    internal static double Ohms(SeededGenerator random) => Math.Pow(10, -2 + (6 * random.NextDouble()));

    private static void Add(WiringNetwork network, SeededGenerator random, string name, int a, int b, double joints)
    {
        if (random.NextDouble() < joints)
        {
            network.AddResistor(name, a, b, 0);
        }
        else if (random.NextInt(2) == 0)
        {
            network.AddCoil(name, a, b, Ohms(random), random.NextDouble());
        }
        else
        {
            network.AddResistor(name, a, b, Ohms(random));
        }
    }
}
