namespace Underturf.Networks.Hydraulics;

/// <summary>Friction in full pipes by the rule of Hazen and Williams: h = 10.667 L Q^1.852 / (C^1.852 d^4.871), metres and seconds.</summary>
/// <remarks>
/// In feet and cubic feet a second 4.727 L Q^1.852 / (C^1.852 d^4.871), from which the factor here is converted exactly. Fitted to water near
/// 16 C at about 1 m/s in pipes above 50 mm; in small laterals, slow or laminar flow it is off by tens of per cent.
/// </remarks>
public static class HazenWilliams
{
    /// <summary>Exponent of the flow.</summary>
    public const double FlowExponentNumber = 1.852;

    private const double DiameterExponent = 4.871;
    private const double CubicMetresPerCubicFoot = 0.3048 * 0.3048 * 0.3048;

    /// <summary>10.667: 4.727 of feet and cubic feet a second, in metres and cubic metres a second.</summary>
    private static readonly double Coefficient =
        4.727 * Math.Pow(0.3048, DiameterExponent) / Math.Pow(CubicMetresPerCubicFoot, FlowExponentNumber);

    /// <summary>r of h = r Q^1.852.</summary>
    /// <param name="smoothnessFactor">C: 150 smooth plastic, 100 old iron.</param>
    public static double ResistancePerFlowFactor(double lengthMetres, double insideDiameterMetres, double smoothnessFactor) =>
        Coefficient * lengthMetres / (Math.Pow(smoothnessFactor, FlowExponentNumber) * Math.Pow(insideDiameterMetres, DiameterExponent));

    /// <summary>Metres of head lost along the pipe.</summary>
    public static double HeadLossMetres(double lengthMetres, double insideDiameterMetres, double smoothnessFactor, double flowCubicMetresPerSecond) =>
        ResistancePerFlowFactor(lengthMetres, insideDiameterMetres, smoothnessFactor) * Math.Pow(flowCubicMetresPerSecond, FlowExponentNumber);
}
