namespace Underturf.Networks.Hydraulics;

/// <summary>Water through a round hole: Q = Cd A sqrt(2 g h) (Torricelli, with a coefficient of discharge).</summary>
public static class HoleDischarge
{
    /// <param name="dischargeFactor">Cd: about 0.6 sharp-edged, 1 without loss.</param>
    public static double FlowCubicMetresPerSecond(double holeDiameterMetres, double headMetres, double dischargeFactor) =>
        dischargeFactor * AreaSquareMetres(holeDiameterMetres) * Math.Sqrt(2 * Water.GravityMetresPerSecondSquared * headMetres);

    public static double AreaSquareMetres(double diameterMetres) => Math.PI * diameterMetres * diameterMetres / 4;

    /// <summary>
    /// Time to empty an upright tank through a hole in its bottom: t = (A / (Cd a)) sqrt(2 h / g) (exact for a surface that sinks slowly).
    /// </summary>
    /// <param name="gravityMetresPerSecondSquared">For worked examples that round it.</param>
    public static double EmptyingSeconds(
        double tankAreaSquareMetres,
        double holeAreaSquareMetres,
        double headMetres,
        double dischargeFactor,
        double gravityMetresPerSecondSquared = Water.GravityMetresPerSecondSquared) =>
        tankAreaSquareMetres / (dischargeFactor * holeAreaSquareMetres) * Math.Sqrt(2 * headMetres / gravityMetresPerSecondSquared);
}
