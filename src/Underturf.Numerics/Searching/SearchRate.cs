namespace Underturf.Numerics;

/// <summary>Rates of finding by exponential detection.</summary>
public static class SearchRate
{
    /// <summary>
    /// Koopman's formula of random search: going over an area A at speed v with sweep width w finds what is there at a rate of w v / A.
    /// </summary>
    /// <param name="sweepMetres">Sweep width: the breadth of a strip that would be found whole, were the search sharp-edged.</param>
    public static double PerMinute(double sweepMetres, double metresPerMinute, double squareMetres) => sweepMetres * metresPerMinute / squareMetres;

    /// <summary>The rate at which so many minutes find what is there with such a chance.</summary>
    public static double PerMinuteWhere(double foundShare, double minutes) => -LogMath.LogOnePlus(-foundShare) / minutes;

    /// <summary>The chances that are left, added up to what they were with the chance of elsewhere, after a search that found nothing.</summary>
    /// <param name="weights">Chance of each cell; what is missing to one is elsewhere.</param>
    public static double[] AfterNothing(ReadOnlySpan<double> weights, ReadOnlySpan<double> ratesPerMinute, ReadOnlySpan<double> minutes)
    {
        var (left, found) = (new double[weights.Length], 0.0);
        for (var i = 0; i < left.Length; i++)
        {
            var taken = -weights[i] * LogMath.ExpMinusOne(-ratesPerMinute[i] * minutes[i]);
            left[i] = weights[i] - taken;
            found += taken;
        }

        for (var i = 0; i < left.Length; i++)
        {
            left[i] /= 1 - found;
        }

        return left;
    }
}
