using Underturf.Networks.Hydraulics;
using Underturf.Numerics;
using Underturf.Quantities;
using Underturf.References.Tests.RandomProperties;

namespace Underturf.References.Tests.Pipes;

/// <summary>
/// A made-up property's pipes: supplies, a looped mainline with check valves and shut ones in it, and stations of a valve and a branching
/// lateral with outlets. Values invented, in the range of practice, but for conductances ten thousand times apart.
/// </summary>
internal sealed class RandomPipes
{
    internal const double Exponent = 0.5;

    private static readonly string[] mainSizes = ["2", "2 1/2", "3", "4"];
    private static readonly string[] lateralSizes = ["3/4", "1", "1 1/4"];

    private readonly Draws draws;
    private readonly List<int> mains = [];

    private RandomPipes(int seed)
    {
        draws = new Draws(new SeededGenerator((ulong)seed));
        Network = new PipeNetwork(new Water(draws.Between(278, 298)));
        Mainline(4 + draws.Below(27));
        Supplies(1 + draws.Below(3));
        for (var station = 2 + draws.Below(11); station > 0; station--)
        {
            Station(station);
        }
    }

    internal PipeNetwork Network { get; }

    internal static PipeNetwork Of(int seed) => new RandomPipes(seed).Network;

    private void Mainline(int junctions)
    {
        mains.Add(Junction("main 0"));
        for (var k = 1; k < junctions; k++)
        {
            mains.Add(Junction($"main {k}"));
            Main(mains[draws.Below(k)], mains[k], loop: false);
        }

        for (var loops = junctions / 3; loops > 0; loops--)
        {
            var (a, b) = (draws.Below(junctions), draws.Below(junctions));
            if (a != b)
            {
                Main(mains[a], mains[b], loop: true);
            }
        }
    }

    private void Main(int a, int b, bool loop)
    {
        var pipe = PipeElement.Pipe("main", a, b, draws.Between(2, 150), Inside(mainSizes), Friction.HazenWilliams(draws.Between(90, 150)), draws.OneIn(3) ? draws.Between(0.2, 10) : 0);
        Network.Add(pipe with { IsOneWay = loop && draws.OneIn(4), IsClosed = loop && draws.OneIn(6) });
    }

    private void Supplies(int count)
    {
        for (var s = 0; s < count; s++)
        {
            var at = mains[draws.Below(mains.Count)];
            var curve = SupplyCurve.FromTwoReadings(Network.Water, Units.From(draws.Between(60, 90), "psi"), Units.From(draws.Between(40, 59), "psi"), Units.From(draws.Between(30, 120), "gpm")).Value;
            var junction = Network.AddSupply($"supply {s}", draws.Between(0, 3), curve);
            Network.Add(PipeElement.Meter("meter", junction, at, MeterCurve()) with { IsOneWay = false });
        }
    }

    private LossCurve MeterCurve()
    {
        var (most, loss) = (draws.Between(2e-3, 8e-3), draws.Between(1, 6));
        return new LossCurve([0, most / 4, most / 2, most], [0, loss / 14, loss / 4, loss]);
    }

    private void Station(int station)
    {
        var (from, behind) = (mains[draws.Below(mains.Count)], Junction($"valve {station}"));
        var coefficient = FlowCoefficient.FromGallonsPerMinuteAtOnePsi(draws.Between(8, 40));
        double? held = draws.OneIn(3) ? Units.From(draws.Between(25, 45), "psi") : null;
        var valve = PipeElement.Valve($"valve {station}", from, behind, coefficient, Network.Water, isClosed: draws.OneIn(8), held);
        Network.Add(draws.OneIn(5) && held is null ? valve with { MostCubicMetresPerSecond = Units.From(draws.Between(3, 20), "gpm") } : valve);
        List<int> lateral = [behind];
        for (var k = 3 + draws.Below(12); k > 0; k--)
        {
            lateral.Add(Junction($"lateral {station}-{k}"));
            var length = draws.OneIn(10) ? draws.Between(0.05, 0.2) : draws.Between(2, 12);
            Network.Add(PipeElement.Pipe("lateral", lateral[draws.Below(lateral.Count - 1)], lateral[^1], length, Inside(lateralSizes), Friction.HazenWilliams(draws.Between(130, 150))));
            if (!draws.OneIn(4))
            {
                Network.AddOutlet("outlet", lateral[^1], Outlet.At(Units.From(draws.Between(0.2, 4), "gpm"), Units.From(30, "psi"), Exponent));
            }
        }
    }

    private int Junction(string name) => Network.AddJunction(name, draws.OneIn(12) ? draws.Between(20, 60) : draws.Between(-6, 12));

    private double Inside(string[] sizes) => PipeSize.InsideDiameterMetres(PipeSeries.Schedule40, draws.Of(sizes)).Value;
}
