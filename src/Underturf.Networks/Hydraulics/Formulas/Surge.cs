namespace Underturf.Networks.Hydraulics;

/// <summary>The rise of pressure when moving water is stopped.</summary>
public static class Surge
{
    /// <summary>Bulk modulus of water at 15 C (from memory; 2 % between 5 and 30 C).</summary>
    public const double BulkModulusPascals = 2.15e9;

    /// <summary>a = sqrt(K / rho) / sqrt(1 + (K / E) (d / e)) (Korteweg; thin wall, free to stretch). Air in the water makes it far slower.</summary>
    /// <param name="wallModulusPascals">E of the pipe: about 2.8e9 rigid PVC, 0.9e9 polyethylene.</param>
    public static double WaveMetresPerSecond(Water water, double insideDiameterMetres, double wallMetres, double wallModulusPascals) =>
        Math.Sqrt(BulkModulusPascals / water.DensityKilogramsPerCubicMetre)
        / Math.Sqrt(1 + (BulkModulusPascals / wallModulusPascals * insideDiameterMetres / wallMetres));

    /// <summary>
    /// dp = rho a v when the valve shuts within the time a wave takes to the far end and back, 2 L / a (Joukowsky); slower than that it falls in
    /// the ratio of the times, dp = rho a v (2 L / a) / t = 2 rho L v / t (Michaud; an upper bound for an even closure).
    /// </summary>
    /// <param name="lengthMetres">From the valve to where the pipe meets much wider ones.</param>
    public static double RisePascals(Water water, double velocityMetresPerSecond, double waveMetresPerSecond, double lengthMetres, double closingSeconds)
    {
        var there = 2 * lengthMetres / waveMetresPerSecond;
        var share = closingSeconds <= there ? 1 : there / closingSeconds;
        return water.DensityKilogramsPerCubicMetre * waveMetresPerSecond * velocityMetresPerSecond * share;
    }
}
