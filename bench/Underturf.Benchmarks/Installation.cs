using Underturf.Networks.Wiring;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.Benchmarks;

/// <summary>An invented installation of so many stations: boxes on a tree of runs, each station's conductor and the common along them, a splice and a coil at the end.</summary>
internal sealed class Installation
{
    private readonly SeededGenerator random;
    private readonly List<int> parents = [-1];
    private readonly List<int> commons = [];
    private readonly List<double> metres = [0];

    public Installation(ulong seed, int stations)
    {
        random = new SeededGenerator(seed).Fork("installation");
        commons.Add(Network.Node("common"));
        for (var box = 1; box <= Math.Max(2, stations / 4); box++)
        {
            parents.Add(random.NextInt(box));
            metres.Add(10 + (60 * random.NextDouble()));
            commons.Add(Network.Node($"c{box}"));
            Network.AddConductor($"common {box}", commons[parents[box]], commons[box], WireSize.FromAwg(14), metres[box], 288);
        }

        Terminals = [.. Enumerable.Range(0, stations).Select(Station)];
    }

    public WiringNetwork Network { get; } = new();

    public int Common => commons[0];

    public IReadOnlyList<int> Terminals { get; }

    /// <summary>The elements that a fault changes: every run, splice and coil of a station.</summary>
    public IReadOnlyList<int> Changeable => [.. Enumerable.Range(0, Network.ElementCount)];

    private int Station(int station)
    {
        var terminal = Network.Node($"t{station}");
        var at = terminal;
        var box = 1 + random.NextInt(parents.Count - 1);
        var path = new Stack<int>();
        for (var hop = box; hop > 0; hop = parents[hop])
        {
            path.Push(hop);
        }

        foreach (var hop in path)
        {
            var next = Network.Node($"s{station} b{hop}");
            Network.AddConductor($"s{station} run {hop}", at, next, WireSize.FromAwg(18), metres[hop], 288);
            at = next;
        }

        var lead = Network.Node($"s{station} lead");
        Network.AddResistor($"s{station} splice", at, lead, 0.03);
        Network.AddCoil($"s{station} coil", lead, commons[box], 25 + (15 * random.NextDouble()), 0.15);
        return terminal;
    }
}
