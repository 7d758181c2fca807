namespace Underturf.Numerics;

/// <summary>Sums and differences of numbers held as logarithms, accurate to a few units in the last place.</summary>
public static class LogMath
{
    /// <summary>ln(sum of exp(x)); negative infinity for no terms. Shifted by the largest term, so nothing overflows.</summary>
    public static double LogSumExp(ReadOnlySpan<double> logs)
    {
        var most = double.NegativeInfinity;
        foreach (var log in logs)
        {
            most = log > most || double.IsNaN(log) ? log : most;
        }

        if (!double.IsFinite(most))
        {
            return most;
        }

        var sum = 0.0;
        foreach (var log in logs)
        {
            sum += Math.Exp(log - most);
        }

        return most + Math.Log(sum);
    }

    /// <summary>ln(exp(a) + exp(b)).</summary>
    public static double LogAdd(double a, double b)
    {
        var (most, least) = a > b ? (a, b) : (b, a);
        return double.IsInfinity(most) ? most : most + LogOnePlus(Math.Exp(least - most));
    }

    /// <summary>ln(1 + x) also for tiny x, by Kahan's correction of the rounding of 1 + x. The runtime's own is ln(x + 1) as written.</summary>
    public static double LogOnePlus(double x)
    {
        var rounded = 1 + x;
        return rounded == 1 || double.IsPositiveInfinity(rounded) ? x : Math.Log(rounded) * (x / (rounded - 1));
    }

    /// <summary>exp(x) - 1 also for tiny x, by the same correction.</summary>
    public static double ExpMinusOne(double x)
    {
        var power = Math.Exp(x);
        if (power == 1)
        {
            return x;
        }

        var less = power - 1;
        return less == -1 || double.IsPositiveInfinity(power) ? less : less * (x / Math.Log(power));
    }

    /// <summary>ln(1 - exp(x)) for x below zero, by whichever of the two forms keeps the digits.</summary>
    public static double LogOneMinusExp(double x) =>
        x > -0.69314718055994531 ? Math.Log(-ExpMinusOne(x)) : LogOnePlus(-Math.Exp(x));
}
