namespace Underturf.Networks.Wiring.Instruments;

/// <summary>An open conductor beside a live one: it has no source and yet shows volts on a meter of high impedance.</summary>
/// <remarks>
/// A capacitive divider into the meter: with C to the live neighbour, D to the common together with the meter's own farads, and R the meter's
/// ohms beside the leakage, |V| = E w C / sqrt((w (C + D))^2 + 1 / R^2), w = 2 pi f (exact for these elements; the ohms of the wires
/// are nothing beside them).
/// </remarks>
public sealed record PhantomVolts
{
    /// <summary>Along which the two lie side by side.</summary>
    public required double LengthMetres { get; init; }

    /// <summary>To the live neighbour.</summary>
    public required double LiveFaradsPerMetre { get; init; }

    /// <summary>To the common and to all that is joined to it.</summary>
    public required double CommonFaradsPerMetre { get; init; }

    /// <summary>Of the open conductor to the common; infinity where there is none.</summary>
    public double LeakOhms { get; init; } = double.PositiveInfinity;

    /// <summary>Rms volts between the open conductor and the common with the meter on them.</summary>
    /// <param name="liveVolts">Of the neighbour over the common.</param>
    public double Under(Voltmeter meter, double liveVolts, double hertz)
    {
        var coupling = 2 * Math.PI * hertz * LengthMetres * LiveFaradsPerMetre;
        var all = coupling + (2 * Math.PI * hertz * ((LengthMetres * CommonFaradsPerMetre) + meter.InputFarads));
        var leak = (1 / meter.InputOhms) + (1 / LeakOhms);
        return Math.Abs(liveVolts) * coupling / Math.Sqrt((all * all) + (leak * leak));
    }
}
