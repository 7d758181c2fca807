using System.Numerics;
using System.Runtime.InteropServices;
using Underturf.Numerics;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>What is known of the shared unknowns: a normal distribution over all of them.</summary>
internal sealed class Outlook
{
    private readonly int count;
    private readonly double[] mean;
    private readonly double[] covariance;

    /// <summary>The unknowns of which it says anything; nothing where that is all of them.</summary>
    private int[]? part;

    private Outlook(int count, double[] mean, double[] covariance)
    {
        this.count = count;
        this.mean = mean;
        this.covariance = covariance;
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
                    mixed.covariance[(i * size) + j] += weight * (part.covariance[(i * size) + j] + ((part.mean[i] - mixed.mean[i]) * (part.mean[j] - mixed.mean[j])));
                }
            }
        }

        return mixed;
    }

    /// <summary>Another object each time that what is known changes.</summary>
    public object Version { get; private set; } = new();

    /// <summary>How many numbers it holds.</summary>
    public int Numbers => covariance.Length;

    public double LogLevel => mean[Unknowns.Level];

    public double LogLevelSpread => Math.Sqrt(covariance[0]);

    public Outlook Clone() => new(count, [.. mean], [.. covariance]);

    /// <summary>A clone in the room of another outlook that nobody needs any more.</summary>
    public Outlook CloneInto(Outlook spare)
    {
        mean.CopyTo(spare.mean, 0);
        covariance.CopyTo(spare.covariance, 0);
        (spare.part, spare.Version) = (part, new object());
        return spare;
    }

    /// <summary>Room for a part of it.</summary>
    public Outlook Room() => new(count, new double[count], new double[count * count]);

    /// <summary>What is known of some unknowns alone, in the room of another outlook: on a large property most readings hang on few of very many. The rest may not be asked about.</summary>
    public Outlook PartInto(Outlook room, int[] some)
    {
        foreach (var i in some)
        {
            room.mean[i] = mean[i];
            foreach (var j in some)
            {
                room.covariance[(i * count) + j] = covariance[(i * count) + j];
            }
        }

        (room.part, room.Version) = (some, new object());
        return room;
    }

    /// <summary>The outlook with some sites taken out again.</summary>
    public Outlook Without(IEnumerable<Site> sites)
    {
        var outlook = Clone();
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
        var sum = prediction.Mean + (prediction.LevelSlope * (Math.Exp(LogLevel) - 1));
        for (var i = 0; i < prediction.Shared.Length; i++)
        {
            sum += prediction.Slopes[i] * mean[prediction.Shared[i]];
        }

        return Math.Max(0, sum);
    }

    /// <summary>Variance of a reading, the instrument's own chance error not counted.</summary>
    public double Variance(Prediction prediction)
    {
        var level = prediction.LevelSlope * Math.Exp(LogLevel);
        var sum = prediction.OwnVariance + (level * level * covariance[0]) + Dot(prediction.Amounts, prediction.Amounts);
        var (shared, slopes) = (prediction.Shared, prediction.Slopes);
        for (var i = 0; i < shared.Length; i++)
        {
            if (slopes[i] == 0)
            {
                continue;
            }

            var row = covariance.AsSpan(shared[i] * count, count);
            sum += slopes[i] * ((slopes[i] * row[shared[i]]) + (2 * level * row[0]));
            for (var j = 0; j < i; j++)
            {
                sum += 2 * slopes[i] * slopes[j] * row[shared[j]];
            }
        }

        return Math.Max(0, sum);
    }

    /// <summary>Covariance of two readings of the same things, the suspects in the same order.</summary>
    public double Covariance(Prediction a, Prediction b)
    {
        var factor = Math.Exp(LogLevel);
        var (levelA, levelB) = (a.LevelSlope * factor, b.LevelSlope * factor);
        var sum = (levelA * levelB * covariance[0]) + (a.Amounts.Length == b.Amounts.Length ? Dot(a.Amounts, b.Amounts) : 0);
        sum += levelA * Along(Unknowns.Level, b.Shared, b.Slopes);
        for (var i = 0; i < a.Shared.Length; i++)
        {
            if (a.Slopes[i] != 0)
            {
                sum += a.Slopes[i] * ((levelB * covariance[a.Shared[i] * count]) + Along(a.Shared[i], b.Shared, b.Slopes));
            }
        }

        return sum;
    }

    /// <summary>Covariance of an unknown with a sum of slopes times unknowns.</summary>
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

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    /// <summary>The direction in which a reading looks, by slopes at the present level.</summary>
    public Direction Toward(Prediction prediction) =>
        new([Unknowns.Level, .. prediction.Shared], [prediction.LevelSlope * Math.Exp(LogLevel), .. prediction.Slopes]);

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

        return sum;
    }

    /// <summary>
    /// Takes a site in (weight 1) or out again (weight -1): the normal density is multiplied by exp(nu a - tau a^2 / 2), a the site's sum. One step
    /// of the Sherman-Morrison formula (from memory; tested against adding rows to the inverse).
    /// </summary>
    /// <returns>log of the integral of the product, the outlook's density being normalised.</returns>
    public double Absorb(Site site, double weight = 1)
    {
        var (shared, slopes) = (site.Direction.Shared, site.Direction.Slopes);
        Version = new object();
        var gain = new double[count];
        for (var i = 0; i < shared.Length; i++)
        {
            if (slopes[i] != 0)
            {
                AddTimes(gain, slopes[i], covariance.AsSpan(shared[i] * count, count));
            }
        }

        var variance = 0.0;
        for (var i = 0; i < shared.Length; i++)
        {
            variance += slopes[i] * gain[shared[i]];
        }

        var (tau, nu, at) = (weight * site.Tau, weight * site.Nu, Mean(site.Direction));
        var scale = 1 + (tau * variance);
        for (var i = 0; i < count; i++)
        {
            mean[i] += gain[i] * (nu - (tau * at)) / scale;
            var factor = gain[i] * tau / scale;
            if (factor != 0)
            {
                AddTimes(covariance.AsSpan(i * count, count), -factor, gain);
            }
        }

        return (-0.5 * LogMath.LogOnePlus(tau * variance)) + (((nu * at) - (0.5 * tau * at * at) + (0.5 * nu * nu * variance)) / scale);
    }

    /// <summary>Adds a multiple of a row, as many numbers at a time as the processor takes.</summary>
    private void AddTimes(Span<double> to, double factor, ReadOnlySpan<double> row)
    {
        if (part is { } some)
        {
            foreach (var i in some)
            {
                to[i] += factor * row[i];
            }

            return;
        }

        var wide = MemoryMarshal.Cast<double, Vector<double>>(to);
        var wideRow = MemoryMarshal.Cast<double, Vector<double>>(row);
        for (var i = 0; i < wide.Length; i++)
        {
            wide[i] += factor * wideRow[i];
        }

        for (var i = wide.Length * Vector<double>.Count; i < to.Length; i++)
        {
            to[i] += factor * row[i];
        }
    }
}

/// <summary>A weighted sum of shared unknowns.</summary>
internal readonly record struct Direction(int[] Shared, double[] Slopes);

/// <summary>What one reading says of a sum of shared unknowns, as a normal factor: precision tau, and nu, the precision times the mean.</summary>
internal readonly record struct Site(Direction Direction, double Tau, double Nu);
