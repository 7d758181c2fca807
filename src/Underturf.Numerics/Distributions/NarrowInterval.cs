namespace Underturf.Numerics;

/// <summary>Probability of a narrow interval by Gauss-Legendre quadrature of eight points (Abramowitz and Stegun, table 25.4; from memory).</summary>
internal static class NarrowInterval
{
    private static readonly double[] Point = [0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363];
    private static readonly double[] Weight = [0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

    /// <summary>
    /// ln of the normal probability between middle - half and middle + half: the density at the middle times the integral of
    /// exp(-middle u - u^2/2) over u from -half to half.
    /// </summary>
    internal static double LogMass(double middle, double half)
    {
        var sum = 0.0;
        for (var k = 0; k < Point.Length; k++)
        {
            var u = half * Point[k];
            sum += Weight[k] * Math.Exp(-0.5 * u * u) * 2 * Math.Cosh(middle * u);
        }

        return Normal.LogDensity(middle) + Math.Log(half * sum);
    }
}
