using Underturf.Networks.Hydraulics;
using Underturf.Numerics;
using Underturf.Quantities;

namespace Underturf.References.Tests.Pipes;

/// <summary>A property of many stations on one looped mainline, each a valve and a lateral of outlets. All invented.</summary>
internal sealed class StationPipes
{
    private readonly SeededGenerator random;
    private readonly List<int> valves = [];

    internal StationPipes(int stations, int outletsEach, ulong seed)
    {
        random = new SeededGenerator(seed);
        Network = new PipeNetwork(new Water(288.15));
        int[] main = [.. Enumerable.Range(0, stations).Select(k => Network.AddJunction($"main {k}", 3 * random.NextDouble()))];
        for (var k = 0; k < stations; k++)
        {
            Network.Add(PipeElement.Pipe("main", main[k], main[(k + 1) % stations], 10 + (20 * random.NextDouble()), Inside("3"), Friction.HazenWilliams(140)));
            Station(main[k], outletsEach);
        }

        var curve = SupplyCurve.FromTwoReadings(Network.Water, Units.From(75, "psi"), Units.From(60, "psi"), Units.From(60, "gpm")).Value;
        Network.Add(PipeElement.Isolation("gate", Network.AddSupply("street", 0, curve), main[0], Inside("3"), 0.2));
    }

    internal PipeNetwork Network { get; }

    internal IReadOnlyList<int> Valves => valves;

    private void Station(int from, int outlets)
    {
        var last = Network.AddJunction("behind valve", 3 * random.NextDouble());
        var coefficient = FlowCoefficient.FromGallonsPerMinuteAtOnePsi(25);
        valves.Add(Network.Add(PipeElement.Valve($"valve {valves.Count + 1}", from, last, coefficient, Network.Water, isClosed: true)));
        for (var k = 0; k < outlets; k++)
        {
            var next = Network.AddJunction("lateral", 3 * random.NextDouble());
            Network.Add(PipeElement.Pipe("lateral", last, next, 3 + (4 * random.NextDouble()), Inside("1"), Friction.HazenWilliams(150)));
            Network.AddOutlet("outlet", next, Outlet.At(Units.From(1 + random.NextDouble(), "gpm"), Units.From(30, "psi"), 0.5));
            last = next;
        }
    }

    private static double Inside(string size) => PipeSize.InsideDiameterMetres(PipeSeries.Schedule40, size).Value;
}
