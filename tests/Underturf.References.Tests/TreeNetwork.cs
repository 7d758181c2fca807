using Underturf.Networks.Wiring;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.References.Tests;

/// <summary>
/// An invented installation: boxes on a tree of cable runs, one conductor a station and the common along them, splices in each box, some
/// stations with several coils, and faults. Values in the range of practice.
/// </summary>
internal sealed class TreeNetwork
{
    private readonly SeededGenerator random;
    private readonly List<int> boxParents = [-1];
    private readonly List<double> runMetres = [0];
    private readonly List<int> commonAt = [];
    private readonly List<int> terminals = [];
    private readonly double kelvins;

    internal TreeNetwork(SeededGenerator random, int coils)
    {
        this.random = random;
        kelvins = 275 + (25 * random.NextDouble());
        LayRuns(1 + (coils / 3));
        for (var left = coils; left > 0;)
        {
            left -= AddStation(Math.Min(left, random.NextInt(5) == 0 ? 2 + random.NextInt(3) : 1));
        }

        AddFaults();
        Network.AddSource("supply", terminals[random.NextInt(terminals.Count)], commonAt[0], 24 + (4 * random.NextDouble()), 0.2 + random.NextDouble());
    }

    internal WiringNetwork Network { get; private set; } = new();

    internal int Common => commonAt[0];

    internal IReadOnlyList<int> Terminals => terminals;

    private void LayRuns(int boxes)
    {
        commonAt.Add(Network.Node("common"));
        for (var box = 1; box <= boxes; box++)
        {
            var parent = random.NextInt(box);
            boxParents.Add(parent);
            runMetres.Add(5 + (120 * random.NextDouble()));
            commonAt.Add(Network.Node($"common {box}"));
            Wire($"common run {box}", commonAt[parent], commonAt[box], box, 14);
        }
    }

    private int AddStation(int coils)
    {
        var station = terminals.Count;
        var node = Network.Node($"terminal {station}");
        terminals.Add(node);
        var box = 1 + random.NextInt(boxParents.Count - 1);
        foreach (var hop in PathTo(box))
        {
            var next = Network.Node($"station {station} box {hop}");
            Wire($"station {station} run {hop}", node, next, hop, 18);
            node = next;
        }

        for (var coil = 0; coil < coils; coil++)
        {
            var lead = Network.Node($"station {station} lead {coil}");
            Network.AddResistor($"station {station} splice {coil}", node, lead, random.NextInt(4) == 0 ? 0 : 0.05 * random.NextDouble());
            Network.AddCoil($"station {station} coil {coil}", lead, commonAt[box], 20 + (40 * random.NextDouble()), 0.03 + (0.2 * random.NextDouble()));
        }

        return coils;
    }

    /// <summary>Series ohms in a splice, shunts to the common, stations crossed together, conductors cut.</summary>
    private void AddFaults()
    {
        for (var fault = random.NextInt(4); fault > 0; fault--)
        {
            var element = random.NextInt(Network.ElementCount);
            var one = random.NextInt(terminals.Count);
            var other = random.NextInt(terminals.Count);
            switch (random.NextInt(4))
            {
                case 0:
                    var (from, to) = (Network.Node($"fault {fault} a"), Network.ElementAt(element).B);
                    Network.AddResistor($"series {fault}", from, to, 1 + (200 * random.NextDouble()));
                    Network.AddCoil($"behind {fault}", Network.ElementAt(element).A, from, 30, 0.1);
                    break;
                case 1:
                    Network.AddResistor($"shunt {fault}", terminals[one], commonAt[^1], Math.Pow(10, 5 * random.NextDouble()));
                    break;
                case 2:
                    Network.AddResistor($"crossed {fault}", terminals[one], terminals[other], 0.3 * random.NextDouble());
                    break;
                default:
                    Network = Network.With(element, double.PositiveInfinity);
                    break;
            }
        }
    }

    private Stack<int> PathTo(int box)
    {
        var path = new Stack<int>();
        for (var at = box; at > 0; at = boxParents[at])
        {
            path.Push(at);
        }

        return path;
    }

    private void Wire(string name, int a, int b, int run, int gauge) =>
        Network.AddConductor(name, a, b, WireSize.FromAwg(gauge), runMetres[run], kelvins);
}
