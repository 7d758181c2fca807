using Underturf.Networks.Wiring.Instruments;
using Underturf.Quantities;

namespace Underturf.Networks.Wiring.FaultDistance;

/// <summary>One reading between two pins.</summary>
/// <param name="MiddleMetres">Middle of the pins along the run from its near end.</param>
/// <param name="Volts">Of the pin nearer to the near end over the other.</param>
public sealed record StepReading(double MiddleMetres, MeasuredVolts Volts);

/// <summary>Step voltages along a run with current leaking to earth at one point.</summary>
public sealed record StepSurvey
{
    private const string Method = "step voltage";
    private const int LeastReadings = 3;

    public required IReadOnlyList<StepReading> Readings { get; init; }

    public required double PinSpacingMetres { get; init; }

    /// <summary>Distance of the fault from the line of pins: the depth where the pins stand right over the run.</summary>
    public required double DistanceMetres { get; init; }

    /// <summary>Standard deviation of the logarithm of that distance.</summary>
    public required double DistanceSpreadShare { get; init; }

    /// <summary>Standard deviation of where the tape begins along the run, the same for all pins.</summary>
    public double StartSpreadMetres { get; init; }

    /// <summary>Least squares over place, strength and distance.</summary>
    public Outcome<StepEstimate> Locate() => Check() is { } problem ? problem : Judge(StepFit.Start(this));

    private Outcome<StepEstimate> Judge(StepFit fit)
    {
        if (!fit.StandsOut)
        {
            return new Problem(
                Method,
                "the readings do not stand out of their own spread",
                "Raise the test current, set the pins wider, or wet the ground at the pins");
        }

        if (!fit.Descend())
        {
            return new Problem(
                Method, "no place of one leak fits the readings", "Leave out readings near other metal, and look for a second leak");
        }

        var (first, last) = (Readings.Min(r => r.MiddleMetres), Readings.Max(r => r.MiddleMetres));
        return fit.PlaceMetres < first || fit.PlaceMetres > last
            ? new Problem(
                Method,
                $"no reversal between {first:0.#} and {last:0.#} m",
                "Go on with the pins the way the volts grow, until they reverse")
            : fit.Estimate();
    }

    private Problem? Check()
    {
        if (Readings.Count < LeastReadings)
        {
            return new Problem(
                Method, $"{Readings.Count} readings do not fix a place", $"Take {LeastReadings} or more, on both sides of the reversal");
        }

        if (Readings.FirstOrDefault(r => !IsReading(r)) is { } bad)
        {
            return new Problem(
                $"{Method}, {bad.MiddleMetres} m",
                "is no reading with a positive standard deviation",
                "Give metres, volts and the spread of the volts");
        }

        return IsPositive(PinSpacingMetres) && IsPositive(DistanceMetres) && IsSpread(DistanceSpreadShare) && IsSpread(StartSpreadMetres)
            ? null
            : new Problem(
                Method,
                "pin spacing and depth must be positive and their spreads not negative",
                "Give the distance between the pins, the likely depth, and how well both are known");
    }

    private static bool IsReading(StepReading reading) =>
        double.IsFinite(reading.MiddleMetres) && double.IsFinite(reading.Volts.Volts) && IsPositive(reading.Volts.SpreadVolts);

    private static bool IsSpread(double spread) => double.IsFinite(spread) && spread >= 0;

    private static bool IsPositive(double metres) => double.IsFinite(metres) && metres > 0;
}

/// <summary>A leak found by step voltage.</summary>
/// <param name="DistanceMetres">Of the leak from the line of pins, prior and readings together.</param>
/// <param name="StrengthVoltMetres">rho I / (2 pi).</param>
/// <param name="MisfitRatio">
/// Root of chi squared over its degrees of freedom: about 1 where the model holds. The spreads are not widened by it.
/// </param>
public sealed record StepEstimate(
    DistanceEstimate Place, double DistanceMetres, double DistanceSpreadMetres, double StrengthVoltMetres, double MisfitRatio);
