namespace Underturf.Networks.Wiring.Instruments;

/// <summary>
/// What a sensor held to the insulation of one conductor of a bundle picks up: its volts over the soil, and a share of the others'.
/// </summary>
/// <param name="NeighbourShare">
/// Share of every other conductor's volts that reaches the sensor as well; smaller the farther the conductor is pulled out.
/// </param>
public sealed record CouplingProbe(double NeighbourShare)
{
    /// <summary>Rms volts at the sensor, |V_i + k sum of V_j|, phases kept (a simple model, derived here, not measured).</summary>
    /// <param name="passShare">What wet or shielded insulation lets through, 0 to 1.</param>
    public double SignalVolts(BundleState state, int conductor, double passShare = 1)
    {
        var own = state.Volts(conductor);
        var (re, im) = (own.Real, own.Imaginary);
        for (var j = 0; j < state.Bundle.Conductors.Count; j++)
        {
            var share = j == conductor ? 0 : NeighbourShare;
            var other = state.Volts(j);
            (re, im) = (re + (share * other.Real), im + (share * other.Imaginary));
        }

        return passShare * new Phasor(re, im).Magnitude;
    }
}
