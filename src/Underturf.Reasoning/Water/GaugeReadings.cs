using Underturf.Numerics;

namespace Underturf.Reasoning.Water;

/// <summary>
/// Readings with one gauge, whose bias is in all of them: errors are normal with a diagonal of their own and one common direction, the bias, in the ratio of what
/// was read. The inverse of such a covariance is known in closed form (Sherman and Morrison; Golub and Van Loan, Matrix Computations, 2.1.4; from memory).
/// </summary>
internal sealed class GaugeReadings
{
    private readonly WaterReading[] readings;
    private readonly double[] precisions;
    private readonly double[] leans;
    private readonly double common;
    private readonly double logScale;

    public GaugeReadings(WaterReading[] readings)
    {
        this.readings = readings;
        precisions = [.. readings.Select(r => 1 / (r.Own * r.Own))];
        leans = [.. readings.Select(r => r.Shared * r.Si)];
        common = 1 + leans.Zip(precisions, (lean, precision) => lean * lean * precision).Sum();
        logScale = readings.Sum(r => Normal.LogDensity(0) - Math.Log(r.Own)) - (0.5 * Math.Log(common));
    }

    /// <summary>ln of the chance of all of them.</summary>
    /// <param name="stands">What there was to read.</param>
    public double LogDensity(Func<WaterReading, double> stands)
    {
        var (squares, along) = (0.0, 0.0);
        for (var k = 0; k < readings.Length; k++)
        {
            var off = readings[k].Si - stands(readings[k]);
            squares += off * off * precisions[k];
            along += off * leans[k] * precisions[k];
        }

        return logScale - (0.5 * (squares - (along * along / common)));
    }
}
