using Underturf.Numerics;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>What is added to a covariance: factor times a gain's product with itself, for each of a few gains.</summary>
internal sealed class Corrections
{
    private readonly List<(double Factor, double[] Gain)> terms = [];

    public void Add(double factor, double[] gain) => terms.Add((factor, gain));

    public Corrections Copy()
    {
        var copy = new Corrections();
        copy.terms.AddRange(terms);
        return copy;
    }

    public double Covariance(int i, int j)
    {
        var sum = 0.0;
        foreach (var (factor, gain) in terms)
        {
            sum += factor * gain[i] * gain[j];
        }

        return sum;
    }

    /// <summary>Of two sums of slopes times unknowns.</summary>
    public double Covariance((double Level, int[] Shared, double[] Slopes) a, (double Level, int[] Shared, double[] Slopes) b)
    {
        var sum = 0.0;
        foreach (var (factor, gain) in terms)
        {
            sum += factor * Share(gain, a) * Share(gain, b);
        }

        return sum;
    }

    /// <summary>Adds to each unknown its covariance with a sum of slopes times unknowns.</summary>
    public void AddTo(double[] covariances, Direction direction)
    {
        foreach (var (factor, gain) in terms)
        {
            RowMath.AddTimes(covariances, factor * Share(gain, (0, direction.Shared, direction.Slopes)), gain);
        }
    }

    /// <summary>A gain's product with slopes, that of the level apart.</summary>
    public static double Share(double[] gain, (double Level, int[] Shared, double[] Slopes) sum)
    {
        var share = sum.Level * gain[Unknowns.Level];
        for (var i = 0; i < sum.Shared.Length; i++)
        {
            share += sum.Slopes[i] * gain[sum.Shared[i]];
        }

        return share;
    }
}
