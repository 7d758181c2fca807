namespace Underturf.Tests.Reasoning.BruteForce;

/// <summary>
/// A normal distribution over all that readings share, as full mean and covariance. About given values of them the exponential of the usual coil's logarithm is straightened
/// and an instrument's chance error is taken, so that a chance does not hang on the order in which readings are taken in.
/// </summary>
internal sealed class DenseUnknowns
{
    private readonly double[] mean;
    private readonly double[] covariance;
    private readonly double[] about;

    public DenseUnknowns(double levelSpread, double[] about)
    {
        var size = about.Length;
        (mean, covariance, this.about) = (new double[size], new double[size * size], about);
        for (var i = 0; i < size; i++)
        {
            covariance[(i * size) + i] = i == 0 ? levelSpread * levelSpread : 1;
        }
    }

    public double[] Mean => mean;

    public double MeanOf(Row row) => At(row, mean);

    /// <summary>Variance of what a reading has for itself.</summary>
    public double Noise(Row row) => row.Noise(At(row, about));

    private double At(Row row, double[] values)
    {
        var sum = row.Base + (row.Level * (Math.Exp(about[0]) - 1 + (Math.Exp(about[0]) * (values[0] - about[0]))));
        for (var i = 0; i < row.At.Length; i++)
        {
            sum += row.Slopes[i] * values[row.At[i]];
        }

        return sum;
    }

    /// <summary>Covariances of a reading with every unknown.</summary>
    public double[] Look(Row row)
    {
        var look = new double[mean.Length];
        void Add(int unknown, double slope)
        {
            for (var j = 0; j < look.Length; j++)
            {
                look[j] += slope * covariance[(unknown * look.Length) + j];
            }
        }

        Add(0, row.Level * Math.Exp(about[0]));
        for (var i = 0; i < row.At.Length; i++)
        {
            Add(row.At[i], row.Slopes[i]);
        }

        return look;
    }

    /// <summary>Covariance of a reading with another whose look is given.</summary>
    public double Along(Row row, double[] look)
    {
        var sum = row.Level * Math.Exp(about[0]) * look[0];
        for (var i = 0; i < row.At.Length; i++)
        {
            sum += row.Slopes[i] * look[row.At[i]];
        }

        return sum;
    }

    /// <summary>Takes in what a reading showed.</summary>
    /// <returns>log of its chance.</returns>
    public double Absorb(Row row)
    {
        var (expected, look) = (MeanOf(row), Look(row));
        var variance = Along(row, look) + row.LocalWith(row) + Noise(row);
        var away = row.Shown - expected;
        for (var i = 0; i < mean.Length; i++)
        {
            var gain = look[i] / variance;
            mean[i] += gain * away;
            for (var j = 0; gain != 0 && j < mean.Length; j++)
            {
                covariance[(i * mean.Length) + j] -= gain * look[j];
            }
        }

        return LogChance(away, variance, row.Step);
    }

    /// <summary>Of a display as wide as its step; the variance holds that of rounding.</summary>
    public static double LogChance(double away, double variance, double step) => (-0.5 * ((away * away / variance) + Math.Log(2 * Math.PI * variance))) + Math.Log(step);
}
