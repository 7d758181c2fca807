namespace Underturf.Networks.Hydraulics;

/// <summary>The friction factor of Darcy and Weisbach by Reynolds number and relative roughness (roughness over inside diameter).</summary>
public static class FrictionFactor
{
    /// <summary>Below this Reynolds number flow is laminar.</summary>
    internal const double LaminarBelow = 2000;

    /// <summary>Above this Reynolds number flow is turbulent; between the two a cubic joins both laws with their slopes.</summary>
    internal const double TurbulentAbove = 4000;

    private const int MostRounds = 20;

    /// <summary>1 / sqrt f = -2 log10(e / 3.7 + 2.51 / (Re sqrt f)) (Colebrook, Journal of the Institution of Civil Engineers 11, 1939).</summary>
    /// <param name="reynoldsNumber">Above 4000.</param>
    /// <param name="relativeRoughnessRatio">0 to 0.05.</param>
    public static double ColebrookFactor(double reynoldsNumber, double relativeRoughnessRatio)
    {
        var (rough, smooth) = (relativeRoughnessRatio / 3.7, 2.51 / reynoldsNumber);
        var x = 1 / Math.Sqrt(HaalandFactor(reynoldsNumber, relativeRoughnessRatio));
        for (var round = 0; round < MostRounds; round++)
        {
            var inside = rough + (smooth * x);
            var off = x + (2 * Math.Log10(inside));
            var step = off / (1 + (2 / Math.Log(10) * smooth / inside));
            x -= step;
            if (Math.Abs(step) < 1e-13 * x)
            {
                break;
            }
        }

        return 1 / (x * x);
    }

    /// <summary>f = 0.25 / log10(e / 3.7 + 5.74 / Re^0.9)^2 (Swamee and Jain, Journal of the Hydraulics Division 102(5), 1976). 1 % of Colebrook.</summary>
    public static double SwameeJainFactor(double reynoldsNumber, double relativeRoughnessRatio)
    {
        var log = Math.Log10((relativeRoughnessRatio / 3.7) + (5.74 / Math.Pow(reynoldsNumber, 0.9)));
        return 0.25 / (log * log);
    }

    /// <summary>1 / sqrt f = -1.8 log10((e / 3.7)^1.11 + 6.9 / Re) (Haaland, Journal of Fluids Engineering 105(1), 1983). 1.5 % of Colebrook.</summary>
    public static double HaalandFactor(double reynoldsNumber, double relativeRoughnessRatio)
    {
        var x = -1.8 * Math.Log10(Math.Pow(relativeRoughnessRatio / 3.7, 1.11) + (6.9 / reynoldsNumber));
        return 1 / (x * x);
    }

    /// <summary>f = 64 / Re (Hagen and Poiseuille, exact).</summary>
    public static double LaminarFactor(double reynoldsNumber) => 64 / reynoldsNumber;

    /// <summary>The law that holds at this Reynolds number.</summary>
    public static double OfFactor(double reynoldsNumber, double relativeRoughnessRatio) =>
        WithSlope(reynoldsNumber, relativeRoughnessRatio).Factor;

    /// <summary>The factor, and its change for each unit of Re.</summary>
    internal static (double Factor, double Slope) WithSlope(double re, double roughness)
    {
        if (re <= LaminarBelow)
        {
            return (LaminarFactor(re), -LaminarFactor(re) / re);
        }

        return re >= TurbulentAbove ? Turbulent(re, roughness) : Between(re, roughness);
    }

    /// <summary>By x = 1 / sqrt f: dx/dRe = (2 / ln 10) (2.51 x / Re^2) / (s + (2 / ln 10) 2.51 / Re), s the sum inside the logarithm.</summary>
    private static (double Factor, double Slope) Turbulent(double re, double roughness)
    {
        var factor = ColebrookFactor(re, roughness);
        var x = 1 / Math.Sqrt(factor);
        var inside = (roughness / 3.7) + (2.51 * x / re);
        var slopeOfX = 2 / Math.Log(10) * 2.51 * x / (re * re) / (inside + (2 / Math.Log(10) * 2.51 / re));
        return (factor, -2 * slopeOfX / (x * x * x));
    }

    private static (double Factor, double Slope) Between(double re, double roughness)
    {
        const double Span = TurbulentAbove - LaminarBelow;
        var (low, lowSlope) = (LaminarFactor(LaminarBelow), -LaminarFactor(LaminarBelow) / LaminarBelow * Span);
        var (high, highSlope) = Turbulent(TurbulentAbove, roughness);
        highSlope *= Span;
        var t = (re - LaminarBelow) / Span;
        var (second, third) = ((3 * (high - low)) - (2 * lowSlope) - highSlope, lowSlope + highSlope - (2 * (high - low)));
        return (low + (t * (lowSlope + (t * (second + (t * third))))), (lowSlope + (t * ((2 * second) + (3 * t * third)))) / Span);
    }
}
