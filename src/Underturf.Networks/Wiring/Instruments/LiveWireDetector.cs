using Underturf.Numerics;

namespace Underturf.Networks.Wiring.Instruments;

/// <summary>
/// A pen that lights beside a live conductor without touching it. It feels volts over the soil by capacitance: the common of a floating
/// supply may light it, neighbours too, and wet or shielded wire may not. Never a proof that a conductor is dead.
/// </summary>
public sealed record LiveWireDetector
{
    public required CouplingProbe Probe { get; init; }

    /// <summary>Volts at the sensor at which it lights half of the times.</summary>
    public required double ThresholdVolts { get; init; }

    /// <summary>Standard deviation of the threshold's logarithm, from one try to the next.</summary>
    public required double ThresholdSpreadShare { get; init; }

    /// <summary>Chance to stay dark whatever the volts.</summary>
    public double MissProbability { get; init; }

    /// <summary>Chance to light whatever the volts: static, a hand that moves.</summary>
    public double ImaginedProbability { get; init; }

    /// <summary>Chance that it lights on a conductor.</summary>
    /// <param name="passShare">What wet or shielded insulation lets through, 0 to 1.</param>
    public double LightsProbability(BundleState state, int conductor, double passShare = 1)
    {
        var felt = Passes(Probe.SignalVolts(state, conductor, passShare));
        var lights = felt * (1 - MissProbability);
        return lights + ((1 - lights) * ImaginedProbability);
    }

    private double Passes(double volts)
    {
        if (volts <= 0)
        {
            return 0;
        }

        var over = Math.Log(volts / ThresholdVolts);
        return ThresholdSpreadShare > 0 ? Normal.Cdf(over / ThresholdSpreadShare) : over >= 0 ? 1 : 0;
    }
}
