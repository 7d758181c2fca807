using System.Numerics;
using Underturf.Numerics;

namespace Underturf.Networks.Wiring;

/// <summary>
/// The changes of one variant, ready to correct readings. A bridge is in series with all that lies beyond it, so its change adds to the readings
/// across it, however large; the rest is a system of a few equations.
/// </summary>
internal sealed class BranchUpdate
{
    /// <summary>A scaled pivot below this has lost the digits that matter.</summary>
    private const double LeastPivot = 1e-8;

    private readonly Bridges bridges;
    private readonly List<(int Element, Complex More)> inSeries = [];
    private readonly List<BranchColumn> columns = [];
    private readonly List<Complex> opposed = [];
    private bool added;
    private double[] scale = [];
    private Complex[] left = [];
    private DenseFactor<Complex>? system;

    private BranchUpdate(Bridges bridges) => this.bridges = bridges;

    /// <returns>Nothing where the variant has to be factored anew.</returns>
    internal static BranchUpdate? Of(ReadOnlySpan<BranchChange> changes, SweepNetwork network, Func<int, int, int, BranchColumn> column)
    {
        var update = new BranchUpdate(network.Bridges);
        foreach (var change in changes)
        {
            if (!update.Take(change, network, column))
            {
                return null;
            }
        }

        return update.Prepare() ? update : null;
    }

    /// <summary>What the changes add to a reading; a real infinity where an opened bridge cuts it off.</summary>
    internal Complex Correction(int driveA, int driveB, int senseA, int senseB)
    {
        var sum = columns.Count == 0 ? 0 : -Loops(driveA, driveB, senseA, senseB);
        foreach (var (element, more) in inSeries)
        {
            var (drive, sense) = (bridges.Crossing(element, driveA, driveB), bridges.Crossing(element, senseA, senseB));
            if (double.IsPositiveInfinity(more.Real) && (drive != 0 || sense != 0))
            {
                return double.PositiveInfinity;
            }

            sum += drive * sense == 0 ? 0 : more * drive * sense;
        }

        return sum;
    }

    /// <summary>d (1/y + Z)^-1 s.</summary>
    private Complex Loops(int driveA, int driveB, int senseA, int senseB)
    {
        if (columns.Count == 1)
        {
            return columns[0].Across(driveA, driveB) * columns[0].Across(senseA, senseB) * left[0];
        }

        for (var k = 0; k < columns.Count; k++)
        {
            left[k] = columns[k].Across(senseA, senseB) * scale[k];
        }

        system?.Solve(left);
        var sum = Complex.Zero;
        for (var k = 0; k < columns.Count; k++)
        {
            sum += columns[k].Across(driveA, driveB) * scale[k] * left[k];
        }

        return sum;
    }

    private bool Take(BranchChange change, SweepNetwork network, Func<int, int, int, BranchColumn> column)
    {
        var (a, b) = change.Element < 0
            ? (network.Merged(change.A), network.Merged(change.B))
            : (network.Merged(network.Layout.A[change.Element]), network.Merged(network.Layout.B[change.Element]));
        var standing = change.Element < 0 ? double.PositiveInfinity : network.OhmsOf(change.Element);
        if (standing.Equals(change.Ohms) || (a == b && standing != 0))
        {
            return true;
        }

        if (standing == 0 || !network.IsOneMergedPart(a, b))
        {
            return false;
        }

        if (change.Element >= 0 && network.Bridges.IsBridge(change.Element))
        {
            inSeries.Add((change.Element, new Complex(change.Ohms - standing, 0)));
            return true;
        }

        added |= double.IsPositiveInfinity(standing);
        columns.Add(column(change.Element, a, b));
        opposed.Add(Opposed(change, standing, network));
        return true;
    }

    /// <summary>1/y of the change of admittance y, in a form that takes joints and opens: z z' / (z - z').</summary>
    private static Complex Opposed(BranchChange change, double standing, SweepNetwork network)
    {
        var after = change.Element < 0 ? new Complex(change.Ohms, 0) : network.Impedance(change.Element, change.Ohms);
        if (double.IsPositiveInfinity(standing))
        {
            return after;
        }

        var before = network.Impedance(change.Element, standing);
        return double.IsPositiveInfinity(change.Ohms) ? -before : before * after / (before - after);
    }

    private bool Prepare()
    {
        // A new branch that leads round a bridge makes it one no more.
        if (added && columns.Exists(c => inSeries.Exists(b => bridges.Crossing(b.Element, c.From, c.To) != 0)))
        {
            return false;
        }

        var size = columns.Count;
        scale = new double[size];
        left = new Complex[size];
        for (var k = 0; k < size; k++)
        {
            scale[k] = 1 / Math.Sqrt(Complex.Abs(opposed[k]) + Complex.Abs(columns[k].Own));
        }

        if (size == 1)
        {
            var sum = opposed[0] + columns[0].Own;
            left[0] = 1 / sum;
            return Complex.Abs(sum) * scale[0] * scale[0] > LeastPivot;
        }

        system = size == 0 ? null : new DenseFactor<Complex>(size);
        for (var i = 0; i < size; i++)
        {
            for (var j = 0; j < size; j++)
            {
                system![i, j] = (columns[i].Across(columns[j]) + (i == j ? opposed[i] : 0)) * scale[i] * scale[j];
            }
        }

        return system is null || system.Factor() > LeastPivot;
    }
}
