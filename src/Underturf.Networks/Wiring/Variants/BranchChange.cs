namespace Underturf.Networks.Wiring;

/// <summary>One branch that a variant has otherwise: an element with other ohms, or a new resistance between two nodes.</summary>
public readonly record struct BranchChange
{
    private BranchChange(int element, int a, int b, double ohms)
    {
        Element = element;
        A = a;
        B = b;
        Ohms = ohms;
    }

    /// <summary>The element that changes; -1 for a new branch.</summary>
    public int Element { get; }

    /// <summary>Ends of a new branch.</summary>
    public int A { get; }

    public int B { get; }

    /// <summary>Its ohms now: 0 is a perfect joint, infinity an open. A coil keeps its henries.</summary>
    public double Ohms { get; }

    /// <summary>An element takes other ohms: a bad splice, a broken wire, a shorted coil.</summary>
    public static BranchChange Of(int element, double ohms) => new(element, -1, -1, ohms);

    /// <summary>A new path between two nodes: a leak, two conductors joined, a coil nobody knew of.</summary>
    public static BranchChange Between(int a, int b, double ohms) => new(-1, a, b, ohms);
}
