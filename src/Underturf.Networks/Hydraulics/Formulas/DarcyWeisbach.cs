namespace Underturf.Networks.Hydraulics;

/// <summary>Friction in full pipes: h = f (L / d) v^2 / (2 g) (Darcy and Weisbach), f from <see cref="FrictionFactor"/>. Any flow, any size.</summary>
public static class DarcyWeisbach
{
    /// <summary>Re = 4 Q / (pi d nu).</summary>
    public static double ReynoldsNumber(double insideDiameterMetres, double flowCubicMetresPerSecond, double kinematicViscositySquareMetresPerSecond) =>
        4 * flowCubicMetresPerSecond / (Math.PI * insideDiameterMetres * kinematicViscositySquareMetresPerSecond);

    /// <summary>Metres of head lost along the pipe.</summary>
    public static double HeadLossMetres(
        double lengthMetres,
        double insideDiameterMetres,
        double roughnessMetres,
        double flowCubicMetresPerSecond,
        double kinematicViscositySquareMetresPerSecond)
    {
        if (flowCubicMetresPerSecond == 0)
        {
            return 0;
        }

        var re = ReynoldsNumber(insideDiameterMetres, flowCubicMetresPerSecond, kinematicViscositySquareMetresPerSecond);
        var factor = FrictionFactor.OfFactor(re, roughnessMetres / insideDiameterMetres);
        return factor * lengthMetres / insideDiameterMetres * MinorLoss.VelocityHeadMetres(insideDiameterMetres, flowCubicMetresPerSecond);
    }

    /// <summary>Inside diameter that loses this head, by halving an interval: the loss falls with every widening.</summary>
    public static double InsideDiameterMetres(
        double headLossMetres,
        double lengthMetres,
        double roughnessMetres,
        double flowCubicMetresPerSecond,
        double kinematicViscositySquareMetresPerSecond)
    {
        var (narrow, wide) = (Math.Max(1e-4, 20 * roughnessMetres), 100.0);
        while (wide / narrow > 1 + 1e-12)
        {
            var middle = Math.Sqrt(narrow * wide);
            var loss = HeadLossMetres(lengthMetres, middle, roughnessMetres, flowCubicMetresPerSecond, kinematicViscositySquareMetresPerSecond);
            (narrow, wide) = loss > headLossMetres ? (middle, wide) : (narrow, middle);
        }

        return Math.Sqrt(narrow * wide);
    }
}
