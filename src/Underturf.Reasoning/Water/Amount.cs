using Underturf.Numerics;

namespace Underturf.Reasoning.Water;

/// <summary>A positive quantity, perhaps with something added to it, as it is believed before it is read.</summary>
/// <param name="Base">What it is.</param>
/// <param name="Added">What comes on top; null for nothing.</param>
internal sealed record Amount(LogNormal Base, LogNormal? Added = null)
{
    private readonly double logMedian = Math.Log(Base.Median);
    private readonly double logScale = Math.Log(Base.LogSpread);
    private readonly double[]? pieces = Added is { } added ? [.. Pieces.Select(p => added.Median * Math.Exp(added.LogSpread * p))] : null;

    /// <summary>Standard normal places of equally likely values of what is added.</summary>
    private static readonly double[] Pieces = [.. Enumerable.Range(0, 7).Select(k => Normal.Quantile((k + 0.5) / 7))];

    /// <summary>Gauss and Hermite's three points: exact for polynomials up to the fifth degree (Abramowitz and Stegun, 25.4.46; from memory).</summary>
    private static readonly (double At, double Weight)[] Points = [(-Math.Sqrt(3), 1.0 / 6), (0, 2.0 / 3), (Math.Sqrt(3), 1.0 / 6)];

    /// <summary>As the practice book has it, in one of its units.</summary>
    public static Amount Of(Property.Practice.Spread spread, string unit) => new(new LogNormal(Quantities.Units.From(spread.Median, unit), spread.LogSpread));

    /// <summary>One positive quantity with this mean and standard deviation.</summary>
    public static Amount Like(double mean, double spread)
    {
        var square = Math.Log(1 + Math.Pow(spread / mean, 2));
        return new Amount(new LogNormal(mean * Math.Exp(-square / 2), Math.Sqrt(square)));
    }

    /// <summary>Of what is added too.</summary>
    public double Median => Base.Median + (Added?.Median ?? 0);

    public double Mean => Base.Mean + (Added?.Mean ?? 0);

    public double Spread => Math.Sqrt(Variance(Base) + (Added is { } added ? Variance(added) : 0));

    /// <summary>ln of the density of a reading with a normal error.</summary>
    public double LogDensity(double read, double sigma)
    {
        var sum = 0.0;
        foreach (var (at, weight) in Points)
        {
            sum += weight * Density(read + (at * sigma));
        }

        // What is far below the error is read as nothing.
        var nothing = Median < sigma ? Math.Exp(Normal.LogDensity(read / sigma)) / sigma : 0;
        return Math.Log(Math.Max(Math.Max(sum, nothing), 1e-300));
    }

    public Amount Times(Property.Practice.Spread? factor) => factor is null
        ? this
        : new Amount(new LogNormal(Base.Median * factor.Median, double.Hypot(Base.LogSpread, factor.LogSpread)), Added);

    public Amount Plus(LogNormal more) =>
        new(Base, Added is { } before ? new LogNormal(before.Median + more.Median, Math.Max(before.LogSpread, more.LogSpread)) : more);

    private double Density(double x)
    {
        if (pieces is null)
        {
            return OfBase(x);
        }

        var sum = 0.0;
        foreach (var piece in pieces)
        {
            sum += OfBase(x - piece);
        }

        return sum / pieces.Length;
    }

    /// <summary>The log-normal density, its constants worked out once: this is where the time goes.</summary>
    private double OfBase(double x)
    {
        if (!(x > 0))
        {
            return 0;
        }

        var log = Math.Log(x);
        return Math.Exp(Normal.LogDensity((log - logMedian) / Base.LogSpread) - logScale - log);
    }

    private static double Variance(LogNormal of) => (Math.Exp(of.LogSpread * of.LogSpread) - 1) * of.Mean * of.Mean;
}
