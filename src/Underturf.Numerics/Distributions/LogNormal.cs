namespace Underturf.Numerics;

/// <summary>A positive quantity whose logarithm is normal.</summary>
/// <param name="Median">In the quantity's own unit, positive.</param>
/// <param name="LogSpread">Standard deviation of the natural logarithm; 0.1 is about ten percent.</param>
public readonly record struct LogNormal(double Median, double LogSpread)
{
    /// <summary>median exp(s^2 / 2).</summary>
    public double Mean => Median * Math.Exp(0.5 * LogSpread * LogSpread);

    /// <summary>Density per unit of the quantity, as a logarithm; negative infinity at and below zero.</summary>
    public double LogDensity(double x) =>
        x > 0 ? Normal.LogDensity(Standard(x)) - Math.Log(LogSpread * x) : double.NegativeInfinity;

    public double Cdf(double x) => x > 0 ? Normal.Cdf(Standard(x)) : 0;

    /// <summary>ln of the probability between a and b, not below a.</summary>
    public double LogCdfInterval(double a, double b) => Normal.LogCdfInterval(Standard(a), Standard(b));

    public double Quantile(double probability) => Median * Math.Exp(LogSpread * Normal.Quantile(probability));

    private double Standard(double x) => x > 0 ? (Math.Log(x) - Math.Log(Median)) / LogSpread : double.NegativeInfinity;
}
