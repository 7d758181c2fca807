namespace Underturf.Networks.Hydraulics;

/// <summary>
/// Where water leaves: Q = k p^x over its junction, nothing where p is not above zero and nothing ever in. A compensating one holds its flow
/// once the pressure is enough.
/// </summary>
/// <param name="CubicMetresPerSecondAtOnePascal">k.</param>
/// <param name="PressureExponentNumber">x: 0.5 for nozzles, 0 to 1 for emitters.</param>
/// <param name="CompensatedFromPascals">Pressure from which on the flow no longer grows; null for none.</param>
public readonly record struct Outlet(double CubicMetresPerSecondAtOnePascal, double PressureExponentNumber, double? CompensatedFromPascals = null)
{
    /// <summary>One that gives a known flow at a known pressure.</summary>
    public static Outlet At(double flowCubicMetresPerSecond, double pressurePascals, double pressureExponentNumber) =>
        new(flowCubicMetresPerSecond / Math.Pow(pressurePascals, pressureExponentNumber), pressureExponentNumber);

    /// <summary>One that gives this flow at this pressure and more; below, as a nozzle does.</summary>
    public static Outlet Compensating(double flowCubicMetresPerSecond, double fromPascals) =>
        At(flowCubicMetresPerSecond, fromPascals, 0.5) with { CompensatedFromPascals = fromPascals };

    /// <summary>A round hole in a pipe: k = Cd A sqrt(2 / rho).</summary>
    public static Outlet Hole(Water water, double holeDiameterMetres, double dischargeFactor) =>
        new(dischargeFactor * HoleDischarge.AreaSquareMetres(holeDiameterMetres) * Math.Sqrt(2 / water.DensityKilogramsPerCubicMetre), 0.5);

    /// <summary>Flow under a pressure over the open air.</summary>
    public double FlowCubicMetresPerSecond(double pressurePascals) => pressurePascals <= 0
        ? 0
        : CubicMetresPerSecondAtOnePascal * Math.Pow(Math.Min(pressurePascals, CompensatedFromPascals ?? double.PositiveInfinity), PressureExponentNumber);
}
