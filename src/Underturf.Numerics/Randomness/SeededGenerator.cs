namespace Underturf.Numerics;

/// <summary>
/// A deterministic source of random numbers: the same seed gives the same stream on every machine. Not for secrets.
/// </summary>
/// <remarks>
/// xoshiro256** 1.0 (Blackman and Vigna, ACM Transactions on Mathematical Software 47(4), 2021), seeded through SplitMix64 (Steele, Lea and
/// Flood, OOPSLA 2014). Period 2^256 - 1. Written for this project from the published recurrences.
/// </remarks>
public sealed class SeededGenerator
{
    private readonly ulong key;
    private ulong s0;
    private ulong s1;
    private ulong s2;
    private ulong s3;

    public SeededGenerator(ulong seed)
    {
        key = seed;
        var walk = seed;
        s0 = SplitMix(ref walk);
        s1 = SplitMix(ref walk);
        s2 = SplitMix(ref walk);
        s3 = SplitMix(ref walk);
    }

    private SeededGenerator(ulong s0, ulong s1, ulong s2, ulong s3)
    {
        (this.s0, this.s1, this.s2, this.s3) = (s0, s1, s2, s3);
        key = s0 ^ ulong.RotateLeft(s1, 16) ^ ulong.RotateLeft(s2, 32) ^ ulong.RotateLeft(s3, 48);
    }

    /// <summary>A generator in a given state, not all zero, to compare with published sequences.</summary>
    public static SeededGenerator FromState(ulong s0, ulong s1, ulong s2, ulong s3) => (s0 | s1 | s2 | s3) == 0
        ? throw new ArgumentException("A state of zeros gives zeros only.", nameof(s0))
        : new SeededGenerator(s0, s1, s2, s3);

    /// <summary>
    /// An independent stream named by a label. It depends on this generator's seed and the label only, not on what was drawn before, so
    /// a new use of randomness leaves the others as they were.
    /// </summary>
    public SeededGenerator Fork(string label)
    {
        // FNV-1a over the UTF-16 units, then two SplitMix steps to spread the key.
        var hash = 14695981039346656037;
        foreach (var unit in label)
        {
            hash = (hash ^ unit) * 1099511628211;
        }

        var walk = key;
        var mixed = SplitMix(ref walk) ^ hash;
        return new SeededGenerator(SplitMix(ref mixed));
    }

    public ulong NextUInt64()
    {
        var result = ulong.RotateLeft(s1 * 5, 7) * 9;
        var shifted = s1 << 17;
        s2 ^= s0;
        s3 ^= s1;
        s1 ^= s2;
        s0 ^= s3;
        s2 ^= shifted;
        s3 = ulong.RotateLeft(s3, 45);
        return result;
    }

    /// <summary>Uniform from 0 up to but not including 1, in steps of 2^-53.</summary>
    public double NextDouble() => (NextUInt64() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Uniform from 0 up to but not including the limit, without bias (Lemire, ACM TOMACS 29(1), 2019).</summary>
    public int NextInt(int maxExclusive)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(maxExclusive);
        var range = (ulong)maxExclusive;
        var high = Math.BigMul(NextUInt64(), range, out var low);
        for (var least = (0 - range) % range; low < least;)
        {
            high = Math.BigMul(NextUInt64(), range, out low);
        }

        return (int)high;
    }

    /// <summary>Standard normal, by Marsaglia's polar method; the second number of each pair is dropped so that no state hides.</summary>
    public double NextNormal()
    {
        while (true)
        {
            var u = (2 * NextDouble()) - 1;
            var v = (2 * NextDouble()) - 1;
            var square = (u * u) + (v * v);
            if (square is > 0 and < 1)
            {
                return u * Math.Sqrt(-2 * Math.Log(square) / square);
            }
        }
    }

    /// <summary>Student's t, by Bailey's polar method (Mathematics of Computation 62, 1994).</summary>
    /// <param name="degreesOfFreedom">Positive, not necessarily whole.</param>
    public double NextStudentT(double degreesOfFreedom)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(degreesOfFreedom);
        while (true)
        {
            var u = (2 * NextDouble()) - 1;
            var v = (2 * NextDouble()) - 1;
            var square = (u * u) + (v * v);
            if (square is > 0 and < 1)
            {
                var spread = LogMath.ExpMinusOne(-2 / degreesOfFreedom * Math.Log(square));
                return u * Math.Sqrt(degreesOfFreedom * spread / square);
            }
        }
    }

    /// <summary>The number of one of the weights, drawn in proportion to them. They are not negative, and their sum is positive.</summary>
    public int Choose(ReadOnlySpan<double> weights)
    {
        var total = 0.0;
        var last = -1;
        for (var k = 0; k < weights.Length; k++)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(weights[k], nameof(weights));
            total += weights[k];
            last = weights[k] > 0 ? k : last;
        }

        if (!(total > 0 && double.IsFinite(total)))
        {
            throw new ArgumentException("The weights need a finite positive sum.", nameof(weights));
        }

        var left = NextDouble() * total;
        for (var k = 0; k < last; k++)
        {
            left -= weights[k];
            if (left < 0)
            {
                return k;
            }
        }

        return last;
    }

    private static ulong SplitMix(ref ulong state)
    {
        state += 0x9E3779B97F4A7C15;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
