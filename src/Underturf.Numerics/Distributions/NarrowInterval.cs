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
        if (half <= 0.15 && Math.Abs(middle) * half <= 0.25)
        {
            return Normal.LogDensity(middle) + Math.Log(2 * half * Series(middle * middle, half * half));
        }

        var sum = 0.0;
        for (var k = 0; k < Point.Length; k++)
        {
            var u = half * Point[k];
            sum += Weight[k] * Math.Exp(-0.5 * u * u) * 2 * Math.Cosh(middle * u);
        }

        return Normal.LogDensity(middle) + Math.Log(half * sum);
    }

    /// <summary>
    /// The mean of exp(-middle u - u^2/2) over the interval as its power series: the sum of half^2k He_2k(middle) / (2k + 1)!, He the
    /// Hermite polynomials. Four terms leave less than 2e-13 where this is used.
    /// </summary>
    private static double Series(double m2, double h2)
    {
        var he2 = m2 - 1;
        var he4 = (((m2 - 6) * m2) + 3);
        var he6 = ((((m2 - 15) * m2) + 45) * m2) - 15;
        var he8 = ((((((m2 - 28) * m2) + 210) * m2) - 420) * m2) + 105;
        return 1 + (h2 * ((he2 / 6) + (h2 * ((he4 / 120) + (h2 * ((he6 / 5040) + (h2 * he8 / 362880)))))));
    }
}
