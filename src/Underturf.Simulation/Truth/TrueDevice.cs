using Underturf.Networks.Wiring.HalfWave;

namespace Underturf.Simulation;

/// <summary>A half-wave device as it really is: which diodes are there and which way they point.</summary>
/// <param name="TakesPositive">The station's own valve takes the half in which its conductor is above the common.</param>
/// <param name="OwnDiode">The diode of the station's own valve is there; without it that valve takes both halves.</param>
/// <param name="OtherDiode">The diode of the further valve is there.</param>
/// <param name="ControllerHalf">The diode at the controller is still there, so that this terminal feeds its own half only.</param>
/// <param name="SaturationAmperes">Of its diodes.</param>
/// <param name="EmissionFactor">Of its diodes.</param>
public sealed record TrueDevice(
    bool TakesPositive,
    bool OwnDiode,
    bool OtherDiode,
    bool ControllerHalf,
    double SaturationAmperes,
    double EmissionFactor)
{
    /// <summary>Ohms of a rectifier's body and leads (from memory).</summary>
    internal const double SeriesOhms = 0.05;

    /// <summary>Shares of devices found in some state: invented, and no model's own.</summary>
    private const double ControllerHalfShare = 0.2, MissingDiodeShare = 0.1;

    internal Junction JunctionAt(double kelvins) => new(SaturationAmperes, EmissionFactor, kelvins);

    /// <summary>Silicon rectifiers of one ampere, with a spread from one make to the next (both from memory).</summary>
    internal static TrueDevice Draw(TrueNumbers numbers, string name)
    {
        var missing = numbers.Even($"{name} missing diode");
        return new TrueDevice(
            numbers.Even($"{name} direction") < 0.5,
            missing >= MissingDiodeShare,
            missing < 1 - MissingDiodeShare,
            numbers.Even($"{name} controller half") < ControllerHalfShare,
            Math.Pow(10, -9.5 + (2 * numbers.Even($"{name} saturation"))),
            1.6 + (0.4 * numbers.Even($"{name} emission")));
    }
}
