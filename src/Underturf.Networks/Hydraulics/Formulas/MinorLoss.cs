namespace Underturf.Networks.Hydraulics;

/// <summary>Losses of fittings: h = K v^2 / (2 g).</summary>
public static class MinorLoss
{
    /// <summary>v = 4 Q / (pi d^2).</summary>
    public static double VelocityMetresPerSecond(double insideDiameterMetres, double flowCubicMetresPerSecond) =>
        4 * flowCubicMetresPerSecond / (Math.PI * insideDiameterMetres * insideDiameterMetres);

    /// <summary>v^2 / (2 g).</summary>
    public static double VelocityHeadMetres(double insideDiameterMetres, double flowCubicMetresPerSecond)
    {
        var velocity = VelocityMetresPerSecond(insideDiameterMetres, flowCubicMetresPerSecond);
        return velocity * velocity / (2 * Water.GravityMetresPerSecondSquared);
    }

    /// <summary>m of h = m Q^2: m = 8 K / (pi^2 g d^4).</summary>
    public static double ResistancePerFlowSquaredFactor(double lossFactor, double insideDiameterMetres) =>
        8 * lossFactor / (Math.PI * Math.PI * Water.GravityMetresPerSecondSquared * Math.Pow(insideDiameterMetres, 4));
}
