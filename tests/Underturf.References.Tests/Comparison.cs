using System.Numerics;

namespace Underturf.References.Tests;

/// <summary>Counts what is compared with the reference engine and keeps the worst of it.</summary>
/// <param name="relative">Difference that is let pass, of the engine's value.</param>
/// <param name="floor">Difference that is let pass whatever the value, in its unit.</param>
/// <param name="engine">What a disagreement calls it.</param>
internal sealed class Comparison(double relative, double floor, string engine = "ngspice")
{
    internal int Count { get; private set; }

    /// <summary>Largest difference above the floor, of the engine's value.</summary>
    internal double WorstShare { get; private set; }

    /// <summary>Where it was out of bounds.</summary>
    internal string? Disagreement { get; private set; }

    internal void Add(Complex theirs, Complex ours, string what)
    {
        Count++;
        var off = (theirs - ours).Magnitude;
        WorstShare = Math.Max(WorstShare, off <= floor ? 0 : (off - floor) / theirs.Magnitude);
        if (!(off <= (relative * theirs.Magnitude) + floor))
        {
            Disagreement ??= $"{what}: {engine} {theirs}, ours {ours}";
        }
    }
}
