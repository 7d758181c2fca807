using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>A length of a run along which gauge, temperature and insulation stay the same.</summary>
public sealed record Stretch
{
    /// <summary>In the reader's words: "box 3 to box 4".</summary>
    public required string Name { get; init; }

    /// <summary>Along the conductor, one way.</summary>
    public required double LengthMetres { get; init; }

    /// <summary>Standard deviation of the logarithm of the length; 0.1 is about ten percent.</summary>
    public double LengthSpreadShare { get; init; }

    /// <summary>Size of the conductor with the fault.</summary>
    public required WireSize Size { get; init; }

    /// <summary>Size of the sound conductor beside it that a loop returns by, or the other one of a shorted pair.</summary>
    public required WireSize ReturnSize { get; init; }

    /// <summary>Temperature of the copper; that of the soil at its depth, with no current worth speaking of.</summary>
    public double TemperatureKelvins { get; init; } = CopperWire.BaseKelvins;

    /// <summary>Capacitance of the conductor to all that the meter's other lead is joined to; zero where nobody knows it.</summary>
    public double FaradsPerMetre { get; init; }
}
