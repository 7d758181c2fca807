using System.Numerics;
using Underturf.Networks.Wiring;
using Underturf.Quantities;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>
/// Networks that ask much of a solver, against ngspice, or against the closed form where ngspice loses its digits. All values invented.
/// </summary>
public sealed class AwkwardNetworkTests(ITestOutputHelper output)
{
    private const double Kelvins = 288.15;

    [Fact]
    public void Floating_islands_are_solved_each_for_itself()
    {
        var network = new WiringNetwork();
        var (common, other) = (Station(network, "one", 26, 3), Station(network, "two", 28, 5));
        network.AddCoil("cut off", network.Node("loose end"), common, 30, 0.1);
        network.AddResistor("cut", network.Node("one hot"), network.Node("island"), double.PositiveInfinity);
        network.AddCoil("on the island", network.Node("island"), network.Node("island end"), 30, 0.1);

        var (solution, theirs) = BothAlternating(network, common);

        foreach (var (node, cold) in new[] { ("one valve", common), ("two valve", other), ("loose end", common) })
        {
            Near(theirs(network.Node(node)) - theirs(cold), solution.VoltageBetween(network.Node(node), cold).Value);
        }

        Assert.Contains("separate parts", solution.VoltageBetween(network.Node("two valve"), common).Problem!.Reason, StringComparison.Ordinal);
        Assert.True(solution.IsFloating(network.Node("island end")));
    }

    [Fact]
    public void One_leak_to_earth_alone_changes_nothing_and_two_do()
    {
        var network = new WiringNetwork();
        var common = Station(network, "one", 26, 3);
        var before = network.Clone().SolveAc(60).Value.VoltageBetween(network.Node("one valve"), common).Value;
        network.AddResistor("first leak", network.Node("one valve"), network.Node("earth"), 200);
        var (floating, _) = BothAlternating(network, common);
        network.AddResistor("second leak", common, network.Node("earth"), 100);
        var (solution, theirs) = BothAlternating(network, common);

        Assert.Equal(before.Magnitude, floating.VoltageBetween(network.Node("one valve"), common).Value.Magnitude, 1e-12);
        var after = solution.VoltageBetween(network.Node("one valve"), common).Value;
        Near(theirs(network.Node("one valve")), after);
        Assert.InRange(before.Magnitude - after.Magnitude, 0.1, 5);
    }

    [Fact]
    public void Zero_ohm_splices_in_loops_of_several_change_no_voltage()
    {
        var network = new WiringNetwork();
        var common = Station(network, "one", 26, 3);
        string[] ring = ["one valve", "splice a", "splice b", "splice c"];
        for (var k = 0; k < ring.Length; k++)
        {
            network.AddResistor($"joint {k}", network.Node(ring[k]), network.Node(ring[(k + 1) % ring.Length]), 0);
        }

        network.AddResistor("across the ring", network.Node("splice a"), network.Node("splice c"), 0);
        network.AddCoil("second coil", network.Node("splice b"), common, 30, 0.1);
        network.AddResistor("lead", network.Node("splice c"), network.Node("lead end"), 0);
        var beyond = network.AddCoil("third coil", network.Node("lead end"), common, 30, 0.1);

        var (solution, theirs) = BothAlternating(network, common);

        Assert.All(ring, name => Near(theirs(network.Node(name)), solution.VoltageBetween(network.Node(name), common).Value));
        Assert.Contains("loop", solution.Current(network.ElementCount - 5).Problem!.Reason, StringComparison.Ordinal);
        Assert.Equal(solution.Current(beyond).Value.Magnitude, solution.Current(beyond - 1).Value.Magnitude, 1e-12);
    }

    /// <summary>
    /// Twenty leaks in parallel and, to first order, 0.01 (m / 20)^2 ohm for the joint that feeds m of them, 0.07175 ohm in all. ngspice agrees
    /// to 1 %; its digits go (see <see cref="NgspiceTrapTests"/>).
    /// </summary>
    [Fact]
    public void Leaks_of_a_teraohm_beside_joints_of_a_hundredth_keep_their_digits()
    {
        var network = new WiringNetwork();
        var (start, earth) = (network.Node("start"), network.Node("earth"));
        var at = start;
        for (var box = 1; box <= 20; box++)
        {
            var next = network.Node($"box {box}");
            network.AddResistor($"joint {box}", at, next, 0.01);
            network.AddResistor($"leak {box}", next, earth, 1e12);
            at = next;
        }

        var along = network.Ohms(start, at).Value;
        var across = network.Ohms(start, earth).Value;
        var netlist = new Netlist();
        netlist.Inject(netlist.Add(network, earth, live: false), start, earth);
        var theirs = Ngspice.Run(netlist.Text, "op")[Netlist.Volts(0, start)].Real;

        Assert.InRange(along.KirchhoffResidualAmperes, 0, 1e-12);
        Assert.Equal(0.2, along.Ohms, 1e-13);
        Assert.Equal(0.07175, across.Ohms - (1e12 / 20), 1e-4);
        output.WriteLine($"ngspice: {theirs} ohm of 5e10, ours {across.Ohms}");
        Assert.Equal(1, theirs / across.Ohms, 1e-2);
    }

    [Fact]
    public void Two_thousand_feet_of_18_AWG_drop_what_ngspice_and_the_closed_form_say()
    {
        var network = new WiringNetwork();
        var (hot, valve, common) = (network.Node("hot"), network.Node("valve"), network.Node("common"));
        network.AddSource("supply", hot, common, 26, 1);
        var metres = Units.From(2000, "ft");
        network.AddConductor("out and back", hot, valve, WireSize.FromAwg(18), 2 * metres, CopperWire.BaseKelvins);
        var coil = network.AddCoil("coil", valve, common, 30, 0.1);

        var (solution, theirs) = BothAlternating(network, common);

        // Exact: 4,000 ft at 6.385 ohm a thousand feet (IEC 60028) are 25.54 ohm.
        var reactance = 2 * Math.PI * 60 * 0.1;
        Near(theirs(valve), solution.VoltageBetween(valve, common).Value);
        Assert.Equal(26 / double.Hypot(30 + 1 + 25.54, reactance), solution.Current(coil).Value.Magnitude, 1e-4);
        Assert.Equal(55.54, network.WithoutSources().Ohms(hot, common).Value.Ohms, 0.005);
    }

    [Fact]
    public void Three_hundred_coils_on_at_once_agree()
    {
        var network = new WiringNetwork();
        var (hot, common) = (network.Node("hot"), network.Node("common"));
        network.AddSource("supply", hot, common, 28, 0.5);
        var before = common;
        for (var station = 0; station < 300; station++)
        {
            before = AddStationAlong(network, hot, before, station);
        }

        var (solution, theirs) = BothAlternating(network, common);

        for (var node = 0; node < network.NodeCount; node++)
        {
            Near(theirs(node), solution.VoltageBetween(node, common).Value);
        }
    }

    /// <summary>A station whose common goes on from the one before, as along a main.</summary>
    /// <returns>Its common.</returns>
    private static int AddStationAlong(WiringNetwork network, int hot, int before, int station)
    {
        var (valve, here) = (network.Node($"valve {station}"), network.Node($"common {station}"));
        network.AddConductor($"common run {station}", before, here, WireSize.FromAwg(12), 6, Kelvins);
        network.AddConductor($"station run {station}", hot, valve, WireSize.FromAwg(18), 6 * (station + 1), Kelvins);
        network.AddCoil($"coil {station}", valve, here, 25 + (station % 7), 0.1);
        return here;
    }

    /// <returns>The common.</returns>
    private static int Station(WiringNetwork network, string name, double volts, double wireOhms)
    {
        var (hot, valve, common) = (network.Node($"{name} hot"), network.Node($"{name} valve"), network.Node($"{name} common"));
        network.AddSource($"{name} supply", hot, common, volts, 1);
        network.AddResistor($"{name} wire", hot, valve, wireOhms);
        network.AddCoil($"{name} coil", valve, common, 30, 0.1);
        return common;
    }

    private static (AcSolution Ours, Func<int, Complex> Theirs) BothAlternating(WiringNetwork network, int ground)
    {
        var netlist = new Netlist();
        var copy = netlist.Add(network, ground, live: true);
        var reference = Ngspice.Run(netlist.Text, "ac lin 1 60 60");
        var solution = network.Clone().SolveAc(60).Value;
        Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-10);
        return (solution, node => reference[Netlist.Volts(copy, node)]);
    }

    private static void Near(Complex theirs, Phasor ours) => Assert.InRange((theirs - new Complex(ours.Real, ours.Imaginary)).Magnitude, 0, 1e-6);
}
