using System.Numerics;

namespace Underturf.Networks.Wiring;

/// <summary>A network without sources, factored at one frequency: direct current at 0 Hz.</summary>
internal sealed class SweepNetwork
{
    private readonly WiringNetwork network;
    private readonly double hertz;
    private readonly AcFactor factor;
    private readonly Lazy<Bridges> bridges;

    internal SweepNetwork(WiringNetwork network, double hertz)
    {
        this.network = network;
        this.hertz = hertz;
        factor = new AcFactor(network, hertz);
        bridges = new Lazy<Bridges>(() => new Bridges(network, Topology));
    }

    internal Topology Topology => factor.Topology;

    internal Bridges Bridges => bridges.Value;

    internal double WorstResidualAmperes { get; private set; }

    internal WiringLayout Layout => network.Layout;

    internal double OhmsOf(int element) => network.Ohmic[element];

    internal int Merged(int node) => Topology.Contraction.Merged(node);

    internal bool IsOneMergedPart(int p, int q) => Topology.SameMergedPart(p, q);

    /// <summary>What the element puts in the way with these ohms.</summary>
    internal Complex Impedance(int element, double ohms) => new(ohms, factor.RadiansPerSecond * network.Inductive[element]);

    internal BranchColumn Column(int a, int b)
    {
        var (re, im) = (new double[Topology.Contraction.Count], new double[Topology.Contraction.Count]);
        re[a] += 1;
        re[b] -= 1;
        factor.Solve(re, im);
        Check(re, im, a, b);
        return new BranchColumn(a, b, re, im);
    }

    /// <summary>The network with the changes made, factored anew.</summary>
    internal SweepNetwork With(ReadOnlySpan<BranchChange> changes)
    {
        var changed = network.Clone();
        foreach (var change in changes)
        {
            if (change.Element >= 0)
            {
                changed = changed.With(change.Element, change.Ohms);
            }
            else
            {
                changed.AddResistor("new branch", change.A, change.B, change.Ohms);
            }
        }

        return new SweepNetwork(changed, hertz);
    }

    internal void ReadAll(IReadOnlyList<Transfer> transfers, Span<Complex> into)
    {
        for (var r = 0; r < transfers.Count; r++)
        {
            var t = transfers[r];
            into[r] = Topology.SamePart(t.DriveA, t.DriveB) && Topology.SamePart(t.SenseA, t.SenseB)
                ? Column(Merged(t.DriveA), Merged(t.DriveB)).Across(Merged(t.SenseA), Merged(t.SenseB))
                : double.PositiveInfinity;
        }
    }

    private void Check(double[] re, double[] im, int a, int b)
    {
        var left = new Complex[re.Length];
        left[a] += 1;
        left[b] -= 1;
        for (var e = 0; e < network.ElementCount; e++)
        {
            if (Topology.ElementSlot[e] >= 0)
            {
                var (p, q) = (Merged(network.Layout.A[e]), Merged(network.Layout.B[e]));
                var amperes = new Complex(factor.SiemensRe[e], factor.SiemensIm[e]) * new Complex(re[p] - re[q], im[p] - im[q]);
                left[p] -= amperes;
                left[q] += amperes;
            }
        }

        foreach (var amperes in left)
        {
            WorstResidualAmperes = Math.Max(WorstResidualAmperes, Complex.Abs(amperes));
        }
    }
}
