using Underturf.Networks.Wiring;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>Plungers and volts made consistent. All values invented.</summary>
public sealed class CoilStatesTests
{
    private const double Inrush = 0.16, Holding = 0.3, PullIn = 19, DropOut = 12;

    [Fact]
    public void A_near_coil_holds_and_draws_less_than_when_it_pulled_in()
    {
        var (network, coil) = Line(5, 1);
        var settled = CoilStates.Settle(network, 60, coil).Value;
        Assert.Equal([Plunger.Holds], settled.Plungers);
        var inrush = network.SolveAc(60).Value.Current(coil[0].Element).Value.Magnitude;
        Assert.True(settled.Solution.Current(coil[0].Element).Value.Magnitude < 0.8 * inrush);
    }

    [Fact]
    public void A_far_coil_chatters_and_a_farther_one_rests()
    {
        Assert.Equal([Plunger.Chatters], Settled(60));
        Assert.Equal([Plunger.Rests], Settled(200));

        static IReadOnlyList<Plunger> Settled(double wireOhms)
        {
            var (network, coil) = Line(wireOhms, 1);
            return CoilStates.Settle(network, 60, coil).Value.Plungers;
        }
    }

    [Fact]
    public void One_coil_that_pulls_in_can_let_another_follow()
    {
        // Two coils behind one wire: the first, easier to move, takes load off and lets the second follow.
        var (network, coils) = Line(22, 2);
        var together = CoilStates.Settle(network, 60, coils).Value;
        Assert.Equal([Plunger.Chatters, Plunger.Chatters], together.Plungers);
        var easy = CoilStates.Settle(network, 60, [coils[0] with { PullInVolts = 15 }, coils[1]]).Value;
        Assert.Equal([Plunger.Holds, Plunger.Holds], easy.Plungers);
        Assert.Equal(3, easy.Solves);
    }

    [Fact]
    public void What_is_settled_agrees_with_its_own_volts_on_random_networks()
    {
        var random = new SeededGenerator(81);
        for (var n = 0; n < 200; n++)
        {
            var (network, coils) = Line(40 * random.NextDouble(), 1 + random.NextInt(5));
            var settled = CoilStates.Settle(network, random.NextInt(2) == 0 ? 50 : 60, coils).Value;
            Assert.InRange(settled.Solution.KirchhoffResidualAmperes, 0, 1e-9);
            for (var k = 0; k < coils.Length; k++)
            {
                var element = settled.Network.ElementAt(coils[k].Element);
                var volts = settled.Solution.VoltageBetween(element.A, element.B).Value.Magnitude;
                Assert.True(settled.Plungers[k] switch
                {
                    Plunger.Holds => volts >= DropOut,
                    Plunger.Rests => volts < DropOut,
                    _ => volts < PullIn,
                });
            }
        }
    }

    [Fact]
    public void A_coil_that_would_fall_out_above_its_pull_in_is_refused_by_name()
    {
        var (network, coils) = Line(5, 1);
        Assert.Equal("coil 0", CoilStates.Settle(network, 60, [coils[0] with { DropOutVolts = 25 }]).Problem!.Place);
        Assert.NotNull(CoilStates.Settle(network, 60, [coils[0] with { Element = 0 }]).Problem);
    }

    private static (WiringNetwork Network, ValveCoil[] Coils) Line(double wireOhms, int count)
    {
        var network = new WiringNetwork();
        var (hot, valve, common) = (network.Node("hot"), network.Node("valve"), network.Node("common"));
        network.AddSource("supply", hot, common, 26, 1);
        network.AddResistor("wire", hot, valve, wireOhms + 0.01);
        return (network, [.. Enumerable.Range(0, count).Select(k => new ValveCoil(network.AddCoil($"coil {k}", valve, common, 30, Inrush), Inrush, Holding, PullIn, DropOut))]);
    }
}
