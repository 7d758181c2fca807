using System.Numerics;
using Underturf.Quantities;

namespace Underturf.Networks.Wiring;

/// <summary>
/// A fixed set of readings of one network, computed anew for many variants that differ in a few branches. The network is factored once; a
/// variant costs a few operations a reading (docs/models/wiring.md, "Variants").
/// </summary>
/// <remarks>
/// A changed bridge adds its change to the readings across it. Of the others, with y the change of admittance of the changed branches, Z the volts across them at one ampere through each, and d and s the volts that
/// drive and sense see of those amperes, T' = T - d (1/y + Z)^-1 s (Sherman, Morrison, Woodbury; the form is from memory, tested against
/// factoring anew). Where that would lose digits, and where parts are joined that were apart, the variant is factored anew.
/// </remarks>
public sealed class TransferSweep
{
    /// <summary>Columns kept; a sweep over more branches than this starts to collect anew.</summary>
    private const int MostColumns = 4096;

    private readonly SweepNetwork network;
    private readonly Transfer[] transfers;
    private readonly (int DriveA, int DriveB, int SenseA, int SenseB)[] merged;
    private readonly Complex[] standing;
    private readonly Dictionary<(int Element, int A, int B), BranchColumn> columns = [];
    private BranchColumn? driven;

    private TransferSweep(SweepNetwork network, IReadOnlyList<Transfer> transfers)
    {
        this.network = network;
        this.transfers = [.. transfers];
        var joints = network.Topology.Contraction;
        merged = [.. transfers.Select(t => (joints.Merged(t.DriveA), joints.Merged(t.DriveB), joints.Merged(t.SenseA), joints.Merged(t.SenseB)))];
        standing = [.. merged.Select(Standing)];
    }

    public int Count => transfers.Length;

    /// <summary>Largest imbalance of currents at a node in all solves so far, at one ampere.</summary>
    public double KirchhoffResidualAmperes => network.WorstResidualAmperes;

    /// <summary>How many variants had to be factored anew.</summary>
    public int FactoredAnew { get; private set; }

    /// <param name="network">Without connected sources.</param>
    /// <param name="hertz">0 for an ohmmeter: coils count by their ohms.</param>
    /// <returns>The sweep, or a problem that names the element or node.</returns>
    public static Outcome<TransferSweep> Of(WiringNetwork network, double hertz, IReadOnlyList<Transfer> transfers)
    {
        if (!(hertz >= 0 && hertz <= 1e6))
        {
            return new Problem("frequency", $"{hertz} Hz is no frequency of the mains", "Give 0 for an ohmmeter, else 50 or 60 Hz");
        }

        if (Refused(network, transfers) is { } problem)
        {
            return problem;
        }

        return new TransferSweep(new SweepNetwork(network, hertz), transfers);
    }

    /// <summary>The readings of the network as it stands, ohms as complex numbers; a real infinity where no path joins drive or sense.</summary>
    public void Read(Span<Complex> into) => standing.CopyTo(into);

    /// <summary>The readings with some branches changed.</summary>
    /// <param name="changes">Each branch at most once.</param>
    /// <param name="into">One value a transfer.</param>
    public void Read(ReadOnlySpan<BranchChange> changes, Span<Complex> into)
    {
        if (BranchUpdate.Of(changes, network, Column) is not { } update)
        {
            FactoredAnew++;
            network.With(changes).ReadAll(transfers, into);
            return;
        }

        for (var r = 0; r < standing.Length; r++)
        {
            var (da, db, sa, sb) = merged[r];
            into[r] = standing[r] + update.Correction(da, db, sa, sb);
        }
    }

    /// <summary>The network is looked through once, not for each transfer.</summary>
    private static Problem? Refused(WiringNetwork network, IReadOnlyList<Transfer> transfers)
    {
        var problem = transfers.Count > 0 ? WiringCheck.BeforeOhms(network, transfers[0].DriveA, transfers[0].DriveB) : null;
        foreach (var t in transfers)
        {
            problem ??= WiringCheck.Known(network, t.DriveA) ?? WiringCheck.Known(network, t.DriveB) ?? WiringCheck.Known(network, t.SenseA) ?? WiringCheck.Known(network, t.SenseB);
        }

        return problem;
    }

    private Complex Standing((int DriveA, int DriveB, int SenseA, int SenseB) t) =>
        network.IsOneMergedPart(t.DriveA, t.DriveB) && network.IsOneMergedPart(t.SenseA, t.SenseB)
            ? Driven(t.DriveA, t.DriveB).Across(t.SenseA, t.SenseB)
            : double.PositiveInfinity;

    /// <summary>Transfers that follow each other often have one drive.</summary>
    private BranchColumn Driven(int a, int b) => driven is { } known && known.From == a && known.To == b ? known : driven = network.Column(a, b);

    private BranchColumn Column(int element, int a, int b)
    {
        if (!columns.TryGetValue((element, a, b), out var column))
        {
            if (columns.Count >= MostColumns)
            {
                columns.Clear();
            }

            column = network.Column(a, b);
            columns[(element, a, b)] = column;
        }

        return column;
    }
}
