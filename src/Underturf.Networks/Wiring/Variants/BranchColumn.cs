using System.Numerics;

namespace Underturf.Networks.Wiring;

/// <summary>The volts that one ampere through a branch, in at one end and out at the other, puts on every node of the network as it stands.</summary>
internal sealed class BranchColumn(int a, int b, double[] re, double[] im)
{
    /// <summary>Volts across the branch itself: what an ohmmeter on it would read.</summary>
    internal Complex Own { get; } = new(re[a] - re[b], im[a] - im[b]);

    /// <summary>Volts of one merged node over another.</summary>
    internal Complex Across(int p, int q) => new(re[p] - re[q], im[p] - im[q]);

    /// <summary>Volts across another branch.</summary>
    internal Complex Across(BranchColumn other) => Across(other.From, other.To);

    internal int From { get; } = a;

    internal int To { get; } = b;
}
