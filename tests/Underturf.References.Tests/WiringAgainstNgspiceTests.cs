using System.Numerics;
using Underturf.Networks.Wiring;
using Underturf.Numerics;

using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>
/// Random installations of 3 to 300 coils against ngspice: every node voltage. The project asks for 0.1 % (AC) and 0.01 % (DC); both engines
/// solve the same linear equations, so the tests ask for one part in a million above a floor of one microvolt or microhm.
/// </summary>
public sealed class WiringAgainstNgspiceTests(ITestOutputHelper output)
{
    private const int Networks = 200;
    private const int PerProcess = 20;
    private const int ReadingsEach = 3;
    private const double Relative = 1e-6;
    private const double Floor = 1e-6;

    [Fact]
    public void Every_alternating_node_voltage_agrees()
    {
        var (compared, floating) = (0, 0);
        foreach (var batch in Installations(41).Chunk(PerProcess))
        {
            var netlist = new Netlist();
            var copies = batch.Select(t => netlist.Add(t.Network, t.Common, live: true)).ToArray();
            var reference = Ngspice.Run(netlist.Text, "ac lin 1 60 60");
            foreach (var (tree, copy) in batch.Zip(copies))
            {
                var solution = tree.Network.SolveAc(60).Value;
                Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-10);
                for (var node = 0; node < tree.Network.NodeCount; node++)
                {
                    if (Ours(solution, node, tree.Common) is { } volts)
                    {
                        Near(reference[Netlist.Volts(copy, node)], volts, tree.Network.NodeName(node));
                        compared++;
                    }
                    else
                    {
                        floating++;
                    }
                }
            }
        }

        output.WriteLine($"ngspice, AC: {compared} node voltages of {Networks} networks compared; {floating} nodes cut off by faults left out.");
        Assert.True(compared > 20 * Networks && floating < compared / 10);
    }

    [Fact]
    public void Every_ohmmeter_reading_and_the_potentials_under_it_agree()
    {
        var (compared, open) = (0, 0);
        foreach (var batch in Installations(42).Chunk(PerProcess))
        {
            var netlist = new Netlist();
            var readings = batch.SelectMany(t => Readings(t, netlist)).ToArray();
            var reference = Ngspice.Run(netlist.Text, "op");
            foreach (var (network, copy, terminal, common) in readings)
            {
                var reading = network.Ohms(terminal, common).Value;
                Assert.InRange(reading.KirchhoffResidualAmperes, 0, 1e-10);
                if (reading.IsOpen)
                {
                    Assert.True(reference[Netlist.Volts(copy, terminal)].Real > 1e9);
                    open++;
                    continue;
                }

                var potentials = Potentials(network, terminal, common);
                Near(potentials[terminal], reading.Ohms, "the reading itself");
                for (var node = 0; node < network.NodeCount; node++)
                {
                    if (Complex.IsFinite(potentials[node]))
                    {
                        Near(reference[Netlist.Volts(copy, node)], potentials[node], network.NodeName(node));
                        compared++;
                    }
                }
            }
        }

        output.WriteLine($"ngspice, DC: {compared} potentials under one ampere compared, {Networks * ReadingsEach - open} readings; {open} open in both.");
        Assert.True(compared > 20 * Networks && open < Networks * ReadingsEach / 4);
    }

    [Fact]
    public void Every_variant_read_by_correction_agrees()
    {
        var (compared, random) = (0, new SeededGenerator(43));
        for (var n = 0; n < 40; n++)
        {
            var tree = new TreeNetwork(random, 5 + (2 * n));
            var network = tree.Network.WithoutSources();
            var sweep = TransferSweep.Of(network, 0, [.. tree.Terminals.Select(t => Transfer.Ohms(t, tree.Common))]).Value;
            var (netlist, read) = (new Netlist(), new Complex[tree.Terminals.Count]);
            var expected = new List<(int Copy, int Terminal, Complex Ours)>();
            for (var variant = 0; variant < 3; variant++)
            {
                // The source, added last, is left out of the netlist.
                var (element, ohms) = (random.NextInt(network.ElementCount - 1), Math.Pow(10, 5 * random.NextDouble()));
                sweep.Read([BranchChange.Of(element, ohms)], read);
                foreach (var (terminal, ours) in tree.Terminals.Zip(read).Take(ReadingsEach))
                {
                    var copy = netlist.Add(network.With(element, ohms), tree.Common, live: false);
                    netlist.Inject(copy, terminal);
                    expected.Add((copy, terminal, ours));
                }
            }

            var reference = Ngspice.Run(netlist.Text, "op");
            foreach (var (copy, terminal, ours) in expected.Where(e => Complex.IsFinite(e.Ours)))
            {
                // Each node's tie of 1e12 ohm in the netlist lies beside the reading.
                var ties = tree.Network.NodeCount * 1e-12 * ours.Magnitude;
                Near(reference[Netlist.Volts(copy, terminal)], ours, tree.Network.NodeName(terminal), ties);
                compared++;
            }
        }

        output.WriteLine($"ngspice, DC: {compared} readings of variants compared.");
        Assert.True(compared > 300);
    }

    private static IEnumerable<TreeNetwork> Installations(ulong seed)
    {
        var random = new SeededGenerator(seed);
        return Enumerable.Range(0, Networks).Select(n => new TreeNetwork(random, 3 + (n * 297 / (Networks - 1))));
    }

    private static IEnumerable<(WiringNetwork Network, int Copy, int Terminal, int Common)> Readings(TreeNetwork tree, Netlist netlist)
    {
        var network = tree.Network.WithoutSources();
        for (var k = 0; k < ReadingsEach; k++)
        {
            var terminal = tree.Terminals[k % tree.Terminals.Count];
            var copy = netlist.Add(network, tree.Common, live: false);
            netlist.Inject(copy, terminal);
            yield return (network, copy, terminal, tree.Common);
        }
    }

    /// <summary>Volts of every node over the common when one ampere goes in at the terminal.</summary>
    private static Complex[] Potentials(WiringNetwork network, int terminal, int common)
    {
        var sweep = TransferSweep.Of(network, 0, [.. Enumerable.Range(0, network.NodeCount).Select(n => new Transfer(terminal, common, n, common))]).Value;
        Assert.InRange(sweep.KirchhoffResidualAmperes, 0, 1e-9);
        var volts = new Complex[sweep.Count];
        sweep.Read(volts);
        return volts;
    }

    private static Complex? Ours(AcSolution solution, int node, int common)
    {
        var volts = solution.VoltageBetween(node, common);
        return volts.Succeeded ? new Complex(volts.Value.Real, volts.Value.Imaginary) : null;
    }

    private static void Near(Complex expected, Complex actual, string node, double slack = 0) =>
        Assert.True(
            (expected - actual).Magnitude <= ((Relative + slack) * expected.Magnitude) + Floor,
            $"{node}: ngspice {expected}, ours {actual}");
}
