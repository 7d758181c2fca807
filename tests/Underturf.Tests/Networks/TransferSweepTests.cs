using System.Numerics;
using Underturf.Networks.Wiring;
using Underturf.Numerics;

namespace Underturf.Tests.Networks;

/// <summary>Variants by correction against the same variants solved from the start, on seeded random networks. All values invented.</summary>
public sealed class TransferSweepTests
{
    private const int Networks = 150;

    [Fact]
    public void Ohms_of_variants_are_those_of_networks_made_with_the_changes()
    {
        var random = new SeededGenerator(71);
        var (compared, anew, variants) = (0, 0, 0);
        for (var n = 0; n < Networks; n++)
        {
            var network = RandomWiring.Make(random, 4 + random.NextInt(14), random.NextInt(8), withSource: false, joints: n % 3 == 0 ? 0.15 : 0);
            var pairs = Enumerable.Range(1, network.NodeCount - 1).Select(b => Transfer.Ohms(0, b)).ToArray();
            var sweep = TransferSweep.Of(network, 0, pairs).Value;
            for (var v = 0; v < 12; v++, variants++)
            {
                compared += CompareOhms(sweep, network, pairs, Changes(network, random));
            }

            anew += sweep.FactoredAnew;
            Assert.InRange(sweep.KirchhoffResidualAmperes, 0, 1e-9);
        }

        Assert.True(compared > 10_000, $"{compared}");
        Assert.True(anew < variants / 4, $"{anew} of {variants} factored anew");
    }

    [Fact]
    public void Volts_at_a_coil_of_variants_are_those_of_the_whole_solution()
    {
        var random = new SeededGenerator(72);
        for (var n = 0; n < Networks; n++)
        {
            var network = RandomWiring.Make(random, 4 + random.NextInt(12), random.NextInt(6), withSource: false);
            var transfer = new Transfer(0, 1 + random.NextInt(network.NodeCount - 1), random.NextInt(network.NodeCount), random.NextInt(network.NodeCount));
            var sweep = TransferSweep.Of(network, 60, [transfer]).Value;
            var changes = Changes(network, random);
            var read = new Complex[1];
            sweep.Read(changes, read);
            var expected = BySolving(Made(network, changes), transfer);
            Assert.True(
                expected is { } volts ? Complex.Abs(volts - read[0]) <= 1e-6 * (1e-3 + Complex.Abs(volts)) : !Complex.IsFinite(read[0]),
                $"network {n}: {read[0]} against {expected}");
        }
    }

    [Fact]
    public void Without_changes_a_sweep_reads_what_stands()
    {
        var network = RandomWiring.Make(new SeededGenerator(73), 12, 3, withSource: false);
        var sweep = TransferSweep.Of(network, 0, [Transfer.Ohms(0, 5), Transfer.Ohms(3, 9)]).Value;
        var (standing, read) = (new Complex[2], new Complex[2]);
        sweep.Read(standing);
        sweep.Read([], read);
        Assert.Equal(standing, read);
        Assert.Equal(network.Ohms(0, 5).Value.Ohms, standing[0].Real, 1e-9);
    }

    [Fact]
    public void A_bridge_opened_beside_a_leak_of_a_teraohm_keeps_its_digits()
    {
        // Exact: 5 ohm of wire opened leaves 1e12 ohm of leak and 30 ohm of coil.
        var network = new WiringNetwork();
        var (terminal, valve, common) = (network.Node("terminal"), network.Node("valve"), network.Node("common"));
        var wire = network.AddResistor("wire", terminal, valve, 5);
        network.AddResistor("leak", terminal, valve, 1e12);
        network.AddCoil("coil", valve, common, 30, 0.1);
        var read = new Complex[1];
        TransferSweep.Of(network, 0, [Transfer.Ohms(terminal, common)]).Value.Read([BranchChange.Of(wire, double.PositiveInfinity)], read);
        Assert.Equal(1e12 + 30, read[0].Real, 1e-2);
    }

    [Fact]
    public void A_live_network_is_refused_by_the_name_of_its_source()
    {
        var network = RandomWiring.Make(new SeededGenerator(74), 6, 2);
        Assert.Contains("supply", TransferSweep.Of(network, 60, [Transfer.Ohms(0, 2)]).Problem!.Place, StringComparison.Ordinal);
    }

    private static int CompareOhms(TransferSweep sweep, WiringNetwork network, Transfer[] pairs, BranchChange[] changes)
    {
        var read = new Complex[pairs.Length];
        sweep.Read(changes, read);
        var made = Made(network, changes);
        for (var r = 0; r < pairs.Length; r++)
        {
            var expected = made.Ohms(pairs[r].DriveA, pairs[r].DriveB).Value;
            Assert.True(
                expected.IsOpen ? double.IsPositiveInfinity(read[r].Real) : Math.Abs(expected.Ohms - read[r].Real) <= 1e-6 * (1e-3 + expected.Ohms),
                $"{read[r].Real} against {expected.Ohms}");
        }

        return pairs.Length;
    }

    private static BranchChange[] Changes(WiringNetwork network, SeededGenerator random)
    {
        var taken = new HashSet<int>();
        return [.. Enumerable.Range(0, 1 + random.NextInt(4)).Select(_ => random.NextInt(network.ElementCount)).Where(taken.Add).Select(e => random.NextInt(4) switch
        {
            0 => BranchChange.Of(e, double.PositiveInfinity),
            1 => BranchChange.Of(e, 0),
            2 => BranchChange.Between(random.NextInt(network.NodeCount), random.NextInt(network.NodeCount), RandomWiring.Ohms(random)),
            _ => BranchChange.Of(e, RandomWiring.Ohms(random)),
        })];
    }

    private static WiringNetwork Made(WiringNetwork network, BranchChange[] changes)
    {
        var made = network.Clone();
        foreach (var change in changes)
        {
            if (change.Element < 0)
            {
                made.AddResistor("new", change.A, change.B, change.Ohms);
            }
            else
            {
                made = made.With(change.Element, change.Ohms);
            }
        }

        return made;
    }

    /// <summary>Volts across the sense nodes over the amperes of a source on the drive nodes; nothing where the two are apart.</summary>
    private static Complex? BySolving(WiringNetwork network, Transfer transfer)
    {
        var source = network.AddSource("drive", transfer.DriveA, transfer.DriveB, 10, 1);
        var solution = network.SolveAc(60).Value;
        Assert.InRange(solution.KirchhoffResidualAmperes, 0, 1e-6);
        var amperes = solution.Current(source).Value;
        var volts = solution.VoltageBetween(transfer.SenseA, transfer.SenseB);
        return volts.Succeeded && amperes.Magnitude > 1e-12
            ? new Complex(volts.Value.Real, volts.Value.Imaginary) / -new Complex(amperes.Real, amperes.Imaginary)
            : null;
    }
}
