using Underturf.Networks.Wiring;
using Underturf.Quantities;

namespace Underturf.References.Tests.RandomProperties;

/// <summary>Boxes on a tree of cable runs from the controller (box 0); each run has its length, its gauges and the temperature of its copper.</summary>
internal sealed class CableTree
{
    private static readonly int[] stationGauges = [18, 18, 18, 16, 14];
    private static readonly int[] commonGauges = [14, 14, 12, 16];

    private readonly List<Run> runs = [new(-1, 0, 0, default, default)];

    internal CableTree(Draws draws, int boxes)
    {
        for (var box = 1; box <= boxes; box++)
        {
            var kelvins = draws.OneIn(6) ? draws.Between(310, 335) : draws.Between(275, 300);
            var (station, common) = (WireSize.FromAwg(draws.Of(stationGauges)), WireSize.FromAwg(draws.Of(commonGauges)));
            runs.Add(new Run(draws.Below(box), draws.Between(5, 125), kelvins, station, common));
        }
    }

    internal int Boxes => runs.Count - 1;

    internal int Parent(int box) => runs[box].Parent;

    /// <summary>The runs from the controller to a box, each by the box at its far end.</summary>
    internal Stack<int> PathTo(int box)
    {
        var path = new Stack<int>();
        for (var at = box; at > 0; at = runs[at].Parent)
        {
            path.Push(at);
        }

        return path;
    }

    internal void LayStation(WiringNetwork network, string name, int a, int b, int run) =>
        network.AddConductor(name, a, b, runs[run].Station, runs[run].Metres, runs[run].Kelvins);

    internal void LayCommon(WiringNetwork network, string name, int a, int b, int run) =>
        network.AddConductor(name, a, b, runs[run].Common, runs[run].Metres, runs[run].Kelvins);

    private readonly record struct Run(int Parent, double Metres, double Kelvins, WireSize Station, WireSize Common);
}
