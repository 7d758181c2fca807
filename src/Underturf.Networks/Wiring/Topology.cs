using Underturf.Numerics;

namespace Underturf.Networks.Wiring;

/// <summary>
/// The network as the solver sees it: perfect joints contracted to one node each, opens left out, one reference node for each connected part.
/// </summary>
internal sealed class Topology
{
    private readonly int[] part;
    private readonly bool[] driven;

    internal Topology(WiringNetwork network, Contraction contraction, ReadOnlySpan<bool> finite)
    {
        Contraction = contraction;
        var layout = network.Layout;
        var count = network.ElementCount;
        var (from, to) = (new List<int>(count), new List<int>(count));
        ElementSlot = new int[count];
        Array.Fill(ElementSlot, -1);
        for (var e = 0; e < count; e++)
        {
            if (finite[e])
            {
                from.Add(contraction.Merged(layout.A[e]));
                to.Add(contraction.Merged(layout.B[e]));
            }
        }

        part = Parts.Of(contraction.Count, from, to);
        Pattern = NodalPattern.For(contraction.Count, [.. from], [.. to], References(from, to));
        for (int e = 0, edge = 0; e < count; e++)
        {
            ElementSlot[e] = finite[e] ? Pattern.EdgeSlots[edge++] : -1;
        }

        Finite = finite.ToArray();
        driven = Driven(network);
    }

    internal Contraction Contraction { get; }

    internal NodalPattern Pattern { get; }

    /// <summary>Whether the element has an admittance: neither open nor a perfect joint.</summary>
    internal bool[] Finite { get; }

    /// <summary>Slot of the element's admittance; -1 where it has none or both its ends are one node.</summary>
    internal int[] ElementSlot { get; }

    internal static bool SameState(double ohms, double other) =>
        (ohms == 0) == (other == 0) && double.IsPositiveInfinity(ohms) == double.IsPositiveInfinity(other);

    internal bool SamePart(int a, int b) => SameMergedPart(Contraction.Merged(a), Contraction.Merged(b));

    internal bool SameMergedPart(int p, int q) => part[p] == part[q];

    /// <summary>Whether a connected source is in the node's part.</summary>
    internal bool IsDriven(int node) => driven[part[Contraction.Merged(node)]];

    private bool[] Driven(WiringNetwork network)
    {
        var found = new bool[part.Length];
        for (var e = 0; e < network.ElementCount; e++)
        {
            if (network.Layout.Kinds[e] == ElementKind.Source && !double.IsPositiveInfinity(network.Ohmic[e]))
            {
                found[part[Contraction.Merged(network.Layout.A[e])]] = true;
            }
        }

        return found;
    }

    /// <summary>In each part the node where most meets, usually the common: the last to go, so it makes no fill.</summary>
    private bool[] References(List<int> from, List<int> to)
    {
        var ends = new int[part.Length];
        for (var e = 0; e < from.Count; e++)
        {
            ends[from[e]]++;
            ends[to[e]]++;
        }

        var best = new int[part.Length];
        Array.Fill(best, -1);
        for (var node = 0; node < part.Length; node++)
        {
            var current = best[part[node]];
            best[part[node]] = current < 0 || ends[node] > ends[current] ? node : current;
        }

        var isReference = new bool[part.Length];
        foreach (var node in best.Where(n => n >= 0))
        {
            isReference[node] = true;
        }

        return isReference;
    }
}
