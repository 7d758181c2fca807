using Underturf.Numerics;

namespace Underturf.Networks.Wiring.Instruments;

/// <summary>A spare coil held between a conductor and the common: it clicks where volts and current suffice.</summary>
/// <remarks>A click proves the way from the controller to the box, not onward to the valve.</remarks>
public sealed record TestCoil
{
    public required double Ohms { get; init; }

    public required double Henries { get; init; }

    /// <summary>Volts across the coil at which half of such coils pull in.</summary>
    public required double PullInVolts { get; init; }

    /// <summary>Standard deviation of that from coil to coil.</summary>
    public required double PullInSpreadVolts { get; init; }

    /// <summary>Current through the coil at which half of such coils pull in.</summary>
    public required double PullInAmperes { get; init; }

    /// <summary>Standard deviation of that from coil to coil.</summary>
    public required double PullInSpreadAmperes { get; init; }

    /// <summary>Chance that somebody hears or feels a click that is there.</summary>
    public double HeardProbability { get; init; } = 1;

    /// <summary>Chance that somebody believes in a click that is none.</summary>
    public double ImaginedProbability { get; init; }

    /// <returns>The number of the element.</returns>
    public int AddTo(WiringNetwork network, string name, int a, int b) => network.AddCoil(name, a, b, Ohms, Henries);

    /// <summary>Chance that a click is noted, with the exact volts across the coil and the current through it.</summary>
    public double ClickProbability(double volts, double amperes)
    {
        var pullsIn = Math.Min(Passes(volts, PullInVolts, PullInSpreadVolts), Passes(amperes, PullInAmperes, PullInSpreadAmperes));
        return (HeardProbability * pullsIn) + (ImaginedProbability * (1 - pullsIn));
    }

    /// <summary>The two limits are those of one spring, so the lower chance counts and not the product.</summary>
    private static double Passes(double value, double limit, double spread) => spread > 0
        ? Normal.Cdf((value - limit) / spread)
        : value >= limit ? 1 : 0;
}
