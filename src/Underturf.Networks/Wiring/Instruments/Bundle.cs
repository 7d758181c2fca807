namespace Underturf.Networks.Wiring.Instruments;

/// <summary>One conductor of a bundle, as far as volts without a source on it matter.</summary>
public sealed record BundleConductor
{
    public required string Name { get; init; }

    /// <summary>Leakage to the soil; infinity where there is none.</summary>
    public double EarthOhms { get; init; } = double.PositiveInfinity;

    /// <summary>Of the coils between this conductor and the bundle's common; infinity where the conductor is free.</summary>
    public double CoilOhms { get; init; } = double.PositiveInfinity;

    public double CoilHenries { get; init; }
}

/// <summary>Conductors that lie side by side in the ground, as one lump of capacitances.</summary>
/// <remarks>
/// Every two conductors have the same capacitance a metre, since a bundle's wires change places along the way, and every conductor the same
/// to the soil. The ohms of the wires are left out: they are nothing beside the capacitances at audio frequencies on runs of this kind.
/// </remarks>
public sealed record Bundle
{
    /// <summary>The number that stands for the soil where a conductor's number is asked for.</summary>
    public const int Earth = -1;

    public required double LengthMetres { get; init; }

    /// <summary>Between any two conductors.</summary>
    public required double PairFaradsPerMetre { get; init; }

    /// <summary>From any conductor to the soil.</summary>
    public required double EarthFaradsPerMetre { get; init; }

    public required IReadOnlyList<BundleConductor> Conductors { get; init; }

    /// <summary>Place in <see cref="Conductors"/> of the one that the coils return to; <see cref="Earth"/> where none is in the bundle.</summary>
    public int CommonNumber { get; init; } = Earth;
}

/// <summary>A supply or a tone transmitter on a bundle.</summary>
/// <param name="From">Place of the fed conductor.</param>
/// <param name="To">Place of the other lead's conductor, or <see cref="Bundle.Earth"/> for a pin in the ground.</param>
/// <param name="Volts">Rms, of the first over the second with nothing connected; all drives in phase.</param>
/// <param name="SourceOhms">Of the source with its leads and its pin, above zero.</param>
public sealed record BundleDrive(int From, int To, double Volts, double SourceOhms);
