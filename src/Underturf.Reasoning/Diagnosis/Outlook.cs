using Underturf.Numerics;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>
/// What is known of the shared unknowns: a normal distribution over all of them. One that differs from another by a few sites has that one's covariance and
/// a correction of rank one for each of them: on a large property a covariance is megabytes.
/// </summary>
internal sealed class Outlook
{
    private readonly int count;
    private readonly double[] mean;
    private readonly double[] covariance;

    /// <summary>What is added to the covariance of the outlook beneath, which has to stay as it is; nothing where the covariance is its own.</summary>
    private readonly Corrections? corrections;

    private (double Log, double Value) level = (0, 1);

    private Outlook(int count, double[] mean, double[] covariance, Corrections? corrections = null)
    {
        this.count = count;
        this.mean = mean;
        this.covariance = covariance;
        this.corrections = corrections;
    }

    /// <summary>Before any reading.</summary>
    public static Outlook Prior(int count, double levelMean, double levelSpread)
    {
        var outlook = new Outlook(count, new double[count], new double[count * count]);
        for (var i = 0; i < count; i++)
        {
            outlook.covariance[(i * count) + i] = 1;
        }

        outlook.mean[Unknowns.Level] = levelMean;
        outlook.covariance[0] = levelSpread * levelSpread;
        return outlook;
    }

    /// <summary>Every unknown known.</summary>
    public static Outlook At(double[] values) => new(values.Length, [.. values], new double[values.Length * values.Length]);

    /// <summary>The normal distribution with mean and covariance of a mixture.</summary>
    public static Outlook Mixed(IReadOnlyList<(Outlook Outlook, double Weight)> parts)
    {
        if (parts is [var only])
        {
            return only.Outlook;
        }

        var size = parts[0].Outlook.count;
        var mixed = new Outlook(size, new double[size], new double[size * size]);
        foreach (var (part, weight) in parts)
        {
            for (var i = 0; i < size; i++)
            {
                mixed.mean[i] += weight * part.mean[i];
            }
        }

        foreach (var (part, weight) in parts)
        {
            for (var i = 0; i < size; i++)
            {
                for (var j = 0; j < size; j++)
                {
                    mixed.covariance[(i * size) + j] += weight * (part.Covariance(i, j) + ((part.mean[i] - mixed.mean[i]) * (part.mean[j] - mixed.mean[j])));
                }
            }
        }

        return mixed;
    }

    /// <summary>Another object each time that what is known changes.</summary>
    public object Version { get; private set; } = new();

    public double LogLevel => mean[Unknowns.Level];

    /// <summary>The usual coil's ohms against the practice book's; asked for with every reading.</summary>
    private double Level
    {
        get
        {
            if (level.Log != LogLevel)
            {
                level = (LogLevel, Math.Exp(LogLevel));
            }

            return level.Value;
        }
    }

    public double LogLevelSpread => Math.Sqrt(Covariance(Unknowns.Level, Unknowns.Level));

    /// <summary>A clone of an outlook whose covariance is its own.</summary>
    public Outlook Clone() => corrections is null ? new(count, [.. mean], [.. covariance]) : throw new InvalidOperationException("It has another's covariance.");

    /// <summary>A clone of an outlook whose covariance is its own, in the room of another that nobody needs any more.</summary>
    public Outlook CloneInto(Outlook spare)
    {
        mean.CopyTo(spare.mean, 0);
        covariance.CopyTo(spare.covariance, 0);
        spare.Version = new object();
        return spare;
    }

    /// <summary>The outlook with a few sites taken out again; this one has to stay as it is for as long as that is used.</summary>
    public Outlook Without(IEnumerable<Site> sites)
    {
        var outlook = new Outlook(count, [.. mean], covariance, corrections?.Copy() ?? new Corrections());
        outlook.Absorb(sites, -1);
        return outlook;
    }

    /// <summary>Takes sites in (weight 1) or out again (weight -1).</summary>
    public void Absorb(IEnumerable<Site> sites, double weight = 1)
    {
        foreach (var site in sites)
        {
            Absorb(site, weight);
        }
    }

    /// <summary>Mean of a reading.</summary>
    public double Mean(Prediction prediction)
    {
        var sum = prediction.Mean + (prediction.LevelSlope * (Level - 1));
        for (var i = 0; i < prediction.Shared.Length; i++)
        {
            sum += prediction.Slopes[i] * mean[prediction.Shared[i]];
        }

        return Math.Max(0, sum);
    }

    /// <summary>Variance of a reading, the instrument's own chance error not counted.</summary>
    public double Variance(Prediction prediction)
    {
        var own = prediction.LevelSlope * Level;
        var sum = prediction.OwnVariance + (own * own * covariance[0]) + RowMath.Dot(prediction.Amounts, prediction.Amounts);
        var (shared, slopes) = (prediction.Shared, prediction.Slopes);
        for (var i = 0; i < shared.Length; i++)
        {
            if (slopes[i] == 0)
            {
                continue;
            }

            var row = covariance.AsSpan(shared[i] * count, count);
            var along = (0.5 * slopes[i] * row[shared[i]]) + (own * row[0]);
            for (var j = 0; j < i; j++)
            {
                along += slopes[j] * row[shared[j]];
            }

            sum += 2 * slopes[i] * along;
        }

        return Math.Max(0, sum + (corrections?.Covariance((own, shared, slopes), (own, shared, slopes)) ?? 0));
    }

    /// <summary>Covariance of two readings of the same things, the suspects in the same order.</summary>
    public double Covariance(Prediction a, Prediction b)
    {
        var (levelA, levelB) = (a.LevelSlope * Level, b.LevelSlope * Level);
        var sum = a.Amounts.Length == b.Amounts.Length ? RowMath.Dot(a.Amounts, b.Amounts) : 0;
        sum += levelA * ((levelB * covariance[0]) + Along(Unknowns.Level, b.Shared, b.Slopes));
        for (var i = 0; i < a.Shared.Length; i++)
        {
            if (a.Slopes[i] != 0)
            {
                sum += a.Slopes[i] * ((levelB * covariance[a.Shared[i] * count]) + Along(a.Shared[i], b.Shared, b.Slopes));
            }
        }

        return sum + (corrections?.Covariance((levelA, a.Shared, a.Slopes), (levelB, b.Shared, b.Slopes)) ?? 0);
    }

    private double Covariance(int i, int j) => covariance[(i * count) + j] + (corrections?.Covariance(i, j) ?? 0);

    /// <summary>Covariance of an unknown with a sum of slopes times unknowns, by the covariance beneath.</summary>
    private double Along(int unknown, int[] shared, double[] slopes)
    {
        var sum = 0.0;
        var row = covariance.AsSpan(unknown * count, count);
        for (var j = 0; j < shared.Length; j++)
        {
            sum += slopes[j] * row[shared[j]];
        }

        return sum;
    }

    /// <summary>The direction in which a reading looks, by slopes at the present level.</summary>
    public Direction Toward(Prediction prediction) =>
        new([Unknowns.Level, .. prediction.Shared], [prediction.LevelSlope * Level, .. prediction.Slopes]);

    /// <summary>Mean of the sum of slopes times unknowns.</summary>
    public double Mean(Direction direction)
    {
        var sum = 0.0;
        for (var i = 0; i < direction.Shared.Length; i++)
        {
            sum += direction.Slopes[i] * mean[direction.Shared[i]];
        }

        return sum;
    }

    /// <summary>Covariance of two such sums.</summary>
    public double Covariance(Direction a, Direction b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Shared.Length; i++)
        {
            sum += a.Slopes[i] * Along(a.Shared[i], b.Shared, b.Slopes);
        }

        return sum + (corrections?.Covariance((0, a.Shared, a.Slopes), (0, b.Shared, b.Slopes)) ?? 0);
    }

    /// <summary>
    /// Takes a site in (weight 1) or out again (weight -1): the normal density is multiplied by exp(nu a - tau a^2 / 2), a the site's sum. One step
    /// of the Sherman-Morrison formula (from memory; tested against adding rows to the inverse).
    /// </summary>
    /// <returns>log of the integral of the product, the outlook's density being normalised.</returns>
    public double Absorb(Site site, double weight = 1)
    {
        Version = new object();
        var gain = Gain(site.Direction);
        var (tau, nu, at) = (weight * site.Tau, weight * site.Nu, Mean(site.Direction));
        var variance = Corrections.Share(gain, (0, site.Direction.Shared, site.Direction.Slopes));
        var scale = 1 + (tau * variance);
        RowMath.AddTimes(mean, (nu - (tau * at)) / scale, gain);
        Correct(-tau / scale, gain);
        return (-0.5 * LogMath.LogOnePlus(tau * variance)) + (((nu * at) - (0.5 * tau * at * at) + (0.5 * nu * nu * variance)) / scale);
    }

    /// <summary>Covariance of every unknown with a sum of them.</summary>
    private double[] Gain(Direction direction)
    {
        var gain = new double[count];
        for (var i = 0; i < direction.Shared.Length; i++)
        {
            if (direction.Slopes[i] != 0)
            {
                RowMath.AddTimes(gain, direction.Slopes[i], covariance.AsSpan(direction.Shared[i] * count, count));
            }
        }

        corrections?.AddTo(gain, direction);
        return gain;
    }

    private void Correct(double factor, double[] gain)
    {
        if (corrections is not null)
        {
            corrections.Add(factor, gain);
            return;
        }

        for (var i = 0; i < count; i++)
        {
            if (gain[i] != 0)
            {
                RowMath.AddTimes(covariance.AsSpan(i * count, count), factor * gain[i], gain);
            }
        }
    }
}
