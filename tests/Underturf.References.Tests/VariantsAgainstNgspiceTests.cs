using System.Numerics;
using Underturf.Networks.Wiring;
using Underturf.Numerics;
using Underturf.References.Tests.RandomProperties;
using Underturf.Simulation.SecondEngine;

namespace Underturf.References.Tests;

/// <summary>Variants of random properties, read by correction of one factorisation, against ngspice solving each anew.</summary>
public sealed class VariantsAgainstNgspiceTests(ITestOutputHelper output)
{
    private const int ReadingsEach = 3;

    private readonly Comparison ohms = new(1e-6, 1e-6);

    [Fact]
    public void Every_variant_read_by_correction_agrees()
    {
        var random = new SeededGenerator(43);
        for (var n = 0; n < 40; n++)
        {
            Compare(new MixedProperty(random, 5 + (2 * n)), random);
        }

        output.WriteLine($"ngspice, DC: {ohms.Count} readings of variants compared, worst {ohms.WorstShare:0.0e0} above a microohm.");
        Assert.Null(ohms.Disagreement);
        Assert.True(ohms.Count > 300);
    }

    private void Compare(MixedProperty property, SeededGenerator random)
    {
        var (network, common) = (property.Lifted(), property.Commons.First());
        var sweep = TransferSweep.Of(network, 0, [.. property.Terminals.Select(t => Transfer.Ohms(t, common))]).Value;
        var (netlist, read) = (new Netlist(), new Complex[property.Terminals.Count]);
        var placed = new List<(int Copy, int Terminal, Complex Ours)>();
        int[] wires = [.. Enumerable.Range(0, network.ElementCount).Where(e => network.ElementAt(e).Kind != ElementKind.Source)];
        for (var variant = 0; variant < 3; variant++)
        {
            var (element, changed) = (wires[random.NextInt(wires.Length)], Math.Pow(10, 5 * random.NextDouble()));
            sweep.Read([BranchChange.Of(element, changed)], read);
            foreach (var (terminal, ours) in property.Terminals.Zip(read).Take(ReadingsEach))
            {
                var copy = netlist.Add(network.With(element, changed), common, live: false);
                netlist.Inject(copy, terminal, common);
                placed.Add((copy, terminal, ours));
            }
        }

        // A hundred thousand volts, rounded, across a screw of two milliohms.
        Assert.InRange(sweep.KirchhoffResidualAmperes, 0, 1e-8);
        var reference = Ngspice.Run(netlist.Text, "op");
        foreach (var (copy, terminal, ours) in placed.Where(e => Complex.IsFinite(e.Ours)))
        {
            ohms.Add(reference[Netlist.Volts(copy, terminal)], ours, network.NodeName(terminal));
        }
    }
}
