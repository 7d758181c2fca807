namespace Underturf.Numerics;

/// <summary>
/// ln(erfc(z) exp(z^2) / t) as a Chebyshev series in t = 2 / (2 + z), for z not below zero. Absolute error below 3e-16.
/// </summary>
/// <remarks>
/// The form is that of Press and others, Numerical Recipes, 3rd edition, section 6.2.2 (from memory). The coefficients were computed for this
/// project at 45 digits from 80 Chebyshev nodes; the first one left out is 5e-20.
/// </remarks>
internal static class ErfcSeries
{
    private static readonly double[] Coefficients =
    [
        -1.3026537197817094342, 0.6419697923564902603, 0.019476473204185836312, -0.0095615147868086316419, -0.0009465953444820368663,
        0.00036683949785276145187, 0.000042523324806907771645, -0.000020278578112534243154, -1.6242900046470255135e-6,
        1.3036558355805232018e-6, 1.5626441722066143178e-8, -8.5238095914926542525e-8, 6.5290544390988514964e-9, 5.0593434955514689418e-9,
        -9.9136415649303308674e-10, -2.2736512229318358557e-10, 9.646791102015526802e-11, 2.3940380830391147447e-12,
        -6.8860275264975533984e-12, 8.9448792730907257167e-13, 3.1309213993429580783e-13, -1.1270822361367252366e-13,
        3.8109052551892320552e-16, 7.1060976136092369878e-15, -1.5230282014571043043e-15, -9.4574945712912340005e-17,
        1.2102371892242789923e-16, -2.8166630877471769718e-17,
    ];

    /// <summary>Clenshaw's recurrence on [0, 1].</summary>
    internal static double At(double t)
    {
        var y = (4 * t) - 2;
        double next = 0, afterNext = 0;
        for (var k = Coefficients.Length - 1; k > 0; k--)
        {
            (next, afterNext) = ((y * next) - afterNext + Coefficients[k], next);
        }

        return (0.5 * ((y * next) + Coefficients[0])) - afterNext;
    }
}
