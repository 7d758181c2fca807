using System.Numerics;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Something between conductor and common at the far end of a leg: wire, then a coil, the coil's shorted turns beside it.</summary>
internal record struct FeederLoad
{
    public required int Node { get; init; }

    public double WireOhms { get; init; }

    public double WireSpread { get; init; }

    public double CoilOhms { get; set; }

    public double CoilSpread { get; init; }

    /// <summary>Standard deviation of the logarithm of what a suspect multiplies the coil's ohms by.</summary>
    public double RatioSpread { get; init; }

    /// <summary>True where the ohms follow the property's usual coil.</summary>
    public bool IsLevel { get; init; }

    /// <summary>Which of the station's own coils it is; -1 for what is none of them.</summary>
    public int Coil { get; init; } = -1;

    /// <summary>Which suspect put it there, or its shunt; -1 for none.</summary>
    public int Suspect { get; init; } = -1;

    /// <summary>True for what has a coil's reactance.</summary>
    public bool IsCoil { get; init; }

    /// <summary>So many coils side by side.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Ohms of a shunt beside the coil; infinite where there is none.</summary>
    public double ShuntOhms { get; set; } = double.PositiveInfinity;

    public double ShuntSpread { get; set; }

    public FeederLoad()
    {
    }

    public readonly bool IsOpen => double.IsPositiveInfinity(CoilOhms);

    /// <summary>The same behind so many ohms of wire more.</summary>
    /// <param name="suspect">Which suspect put it there; what is not known of an earlier one's wire is counted with its own.</param>
    public readonly FeederLoad Behind(double ohms, double logSpread, int suspect) => this with
    {
        WireOhms = WireOhms + ohms,
        WireSpread = double.Hypot(WireOhms * WireSpread, ohms * logSpread) / (WireOhms + ohms),
        Suspect = suspect,
    };

    /// <summary>Impedance, and its slopes with the ohms of the coil and of the shunt.</summary>
    /// <param name="reactanceOhms">Of one coil; 0 for direct current.</param>
    public readonly (Complex Ohms, Complex CoilSlope, Complex ShuntSlope) Impedance(double reactanceOhms)
    {
        var coil = new Complex(CoilOhms, IsCoil ? reactanceOhms / Count : 0);
        if (double.IsPositiveInfinity(ShuntOhms))
        {
            return (WireOhms + coil, Complex.One, Complex.Zero);
        }

        var sum = coil + ShuntOhms;
        var (share, rest) = (ShuntOhms / sum, coil / sum);
        return (WireOhms + (coil * share), share * share, rest * rest);
    }
}
