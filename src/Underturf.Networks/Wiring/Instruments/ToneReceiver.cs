using Underturf.Numerics;

namespace Underturf.Networks.Wiring.Instruments;

/// <summary>
/// An ear for the tone that a transmitter puts on one conductor. Every wire of the bundle carries some, by capacitance and through coils; a
/// leak to the soil and coils pull the fed one down. The loudest at falling power is it, mostly.
/// </summary>
public sealed record ToneReceiver
{
    private const int HalfPoints = 160;
    private const double Reach = 8;

    public required CouplingProbe Probe { get; init; }

    /// <summary>Volts at the sensor that half of the tries make out at all.</summary>
    public required double FloorVolts { get; init; }

    /// <summary>Standard deviation of the logarithm of a strength as the ear compares it.</summary>
    public required double EarSpreadShare { get; init; }

    /// <summary>Strength on every conductor relative to the fed one; 20 log10 of it in decibels.</summary>
    public IReadOnlyList<double> Ratios(BundleState state, int fed)
    {
        var strongest = Probe.SignalVolts(state, fed);
        return [.. state.Bundle.Conductors.Select((_, i) => Probe.SignalVolts(state, i) / strongest)];
    }

    /// <summary>Chance that the tone is made out on a conductor at all.</summary>
    public double HeardProbability(BundleState state, int conductor)
    {
        var over = Math.Log(Probe.SignalVolts(state, conductor) / FloorVolts);
        return EarSpreadShare > 0 ? Normal.Cdf(over / EarSpreadShare) : over >= 0 ? 1 : 0;
    }

    /// <summary>
    /// Chance of each conductor to be taken for the loudest, with independent errors of the ear: the mean over one's own error of the chance
    /// that all others stay below, by the trapezoid rule (error below 1e-9).
    /// </summary>
    /// <remarks>They add up to one. A signal of no volts cannot be the loudest.</remarks>
    public IReadOnlyList<double> LoudestProbabilities(BundleState state)
    {
        var logs = state.Bundle.Conductors.Select((_, i) => Math.Log(Probe.SignalVolts(state, i))).ToArray();
        return [.. logs.Select((_, i) => LoudestProbability(logs, i))];
    }

    private double LoudestProbability(double[] logs, int own)
    {
        if (double.IsNegativeInfinity(logs[own]))
        {
            return 0;
        }

        var spread = Math.Max(EarSpreadShare, 1e-12);
        var (sum, step) = (0.0, Reach / HalfPoints);
        for (var k = -HalfPoints; k <= HalfPoints; k++)
        {
            var z = k * step;
            var below = Normal.Density(z) * step;
            for (var j = 0; j < logs.Length; j++)
            {
                below *= j == own ? 1 : Normal.Cdf(((logs[own] - logs[j]) / spread) + z);
            }

            sum += below;
        }

        return sum;
    }
}
