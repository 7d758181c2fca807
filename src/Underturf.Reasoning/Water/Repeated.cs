using Underturf.Numerics;

namespace Underturf.Reasoning.Water;

/// <summary>A reading as it bears on an amount, in SI.</summary>
/// <param name="Sigma">Its standard deviation.</param>
/// <param name="Own">The part of it that is new with each reading of the same thing.</param>
/// <param name="Shared">The part that all readings of the instrument have in common, as a share of what was read.</param>
internal readonly record struct Read(double Si, double Sigma, double Own, double Shared)
{
    public static Read Of(WaterReading reading, double elsewhere = 0) => new(reading.Si - elsewhere, reading.Sigma, reading.Own, reading.Shared);
}

/// <summary>
/// Readings of one thing that stood as it was between them: what there is to read is one unknown, the instrument's bias another, and only the rest of each
/// reading's error is its own.
/// </summary>
internal static class Repeated
{
    /// <summary>ln of the chance of readings of one amount.</summary>
    /// <param name="apart">Chance that something came between, so that each is of an amount of its own.</param>
    public static double LogDensity(this Amount amount, ReadOnlySpan<Read> read, double apart)
    {
        if (read.Length == 1)
        {
            return amount.LogDensity(read[0].Si, read[0].Sigma);
        }

        var alone = 0.0;
        foreach (var (si, sigma, _, _) in read)
        {
            alone += amount.LogDensity(si, sigma);
        }

        return LogMath.LogAdd(Math.Log(1 - apart) + OfOne(amount, read), Math.Log(apart) + alone);
    }

    /// <summary>
    /// With normal errors readings of one thing come to their mean, weighted by their own errors, and to how far they lie about it, which is as likely
    /// whatever there is to read: sufficient statistics of the normal law, exact.
    /// </summary>
    private static double OfOne(Amount amount, ReadOnlySpan<Read> read)
    {
        var (weight, mean, shared) = (0.0, 0.0, 0.0);
        foreach (var (si, _, own, common) in read)
        {
            var precision = 1 / (own * own);
            (weight, mean, shared) = (weight + precision, mean + (precision * si), Math.Max(shared, common));
        }

        (mean, var error) = (mean / weight, Math.Sqrt(1 / weight));
        var about = Math.Log(error) - Normal.LogDensity(0);
        foreach (var (si, _, own, _) in read)
        {
            about += Normal.LogDensity((si - mean) / own) - Math.Log(own);
        }

        return about + amount.LogDensity(mean, double.Hypot(error, shared * mean));
    }
}
