using Underturf.Networks.Hydraulics;
using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>
/// The pressures at the point of connection under each state of the supply: one static pressure and one loss, which grows with the flow as
/// friction does, both unknown and summed over.
/// </summary>
internal sealed class SupplyWater
{
    private const int Places = 61;

    /// <summary>Standard deviations to either side over which an unknown is summed.</summary>
    private const double Reach = 4;

    private readonly WaterCase owner;
    private readonly StationFlows flows;

    public SupplyWater(WaterCase owner, StationFlows flows)
    {
        (this.owner, this.flows) = (owner, flows);
        Readings = [.. owner.Readings.Where(r => r.Probe.Measures is WaterMeasure.StaticPressure or WaterMeasure.RunningPressure)];
    }

    public IReadOnlyList<WaterReading> Readings { get; }

    /// <summary>ln of the probability of a state beforehand.</summary>
    public double LogPrior(WaterFault? fault) => owner.Water.Of(WaterScope.Supply).Sum(f => Math.Log(f == fault ? f.Rate : 1 - f.Rate));

    /// <summary>ln of the chance of all pressures under a fault of the supply; null for none.</summary>
    /// <param name="except">A reading to leave out.</param>
    public double LogChance(WaterFault? fault, WaterReading? except = null) => Readings.Count == 0 ? 0 : LogMath.LogSumExp(Grid(fault, except).LogWeights);

    /// <summary>ln of the chance of all pressures for a cause that the book does not know: spread evenly over what could be.</summary>
    public double LogChanceUnmodelled
    {
        get
        {
            var usual = owner.Water.Usual.StaticKilopascals;
            return -Readings.Count * Math.Log(Units.From(usual.Median, "kPa") * Math.Exp(Reach * usual.LogSpread));
        }
    }

    /// <summary>What is believed of both under a state: means and standard deviations, in Pa; the loss is that of the usual flow.</summary>
    public (double Static, double StaticSpread, double Loss, double LossSpread) Believed(WaterFault? fault)
    {
        var (statics, losses, logs) = Grid(fault);
        var total = LogMath.LogSumExp(logs);
        double[] shares = [.. logs.Select(l => Math.Exp(l - total))];
        var (p, ps) = Moments(shares, k => statics[k / Places]);
        var (l, ls) = Moments(shares, k => losses[k % Places]);
        return (p, ps, l, ls);
    }

    /// <summary>What a gauge is expected to show, before any pressure was read.</summary>
    public Amount Expected(WaterFault? fault, WaterReading reading)
    {
        var (level, loss, share) = (Amount(owner.Water.Usual.StaticKilopascals, fault?.StaticFactor), Amount(owner.Water.Usual.LossKilopascals, fault?.LossFactor), ShareOf(reading));
        var middle = Math.Max(level.Median - (share * loss.Median), reading.Sigma);
        return Water.Amount.Like(middle, Math.Min(middle, double.Hypot(level.Median * level.Base.LogSpread, share * loss.Median * loss.Base.LogSpread)));
    }

    /// <summary>Flow at which the usual loss is reckoned.</summary>
    public double UsualFlow => Units.From(owner.Water.Usual.StationLitresPerMinute.Median, "L/min");

    private (double[] Statics, double[] Losses, double[] LogWeights) Grid(WaterFault? fault, WaterReading? except = null)
    {
        var usual = owner.Water.Usual;
        var (statics, staticWeights) = Axis(usual.StaticKilopascals, fault?.StaticFactor);
        var (losses, lossWeights) = Axis(usual.LossKilopascals, fault?.LossFactor);
        var logs = new double[Places * Places];
        for (var k = 0; k < logs.Length; k++)
        {
            logs[k] = staticWeights[k / Places] + lossWeights[k % Places] + Readings.Where(r => r != except).Sum(r => LogDensity(r, fault, statics[k / Places], losses[k % Places]));
        }

        return (statics, losses, logs);
    }

    private double LogDensity(WaterReading reading, WaterFault? fault, double staticPascals, double lossPascals)
    {
        var active = fault is null || !owner.IsCured(fault, [], reading.Moment);
        var (level, loss) = active ? (staticPascals, lossPascals) : (staticPascals / (fault!.StaticFactor?.Median ?? 1), lossPascals / (fault.LossFactor?.Median ?? 1));
        return Normal.LogDensity((reading.Si - level + (loss * ShareOf(reading))) / reading.Sigma) - Math.Log(reading.Sigma);
    }

    /// <summary>Of the usual loss, that which is lost at the reading's flow.</summary>
    private double ShareOf(WaterReading reading) => reading.Station is { } station ? Math.Pow(FlowOf(station) / UsualFlow, HazenWilliams.FlowExponentNumber) : 0;

    private static Amount Amount(Spread usual, Spread? factor) => Water.Amount.Of(usual, "kPa").Times(factor);

    /// <summary>As the meter showed it, or as it is to be expected.</summary>
    private double FlowOf(string station) =>
        owner.Of(WaterMeasure.MeterFlow).LastOrDefault(r => r.Station == station)?.Si ?? flows.Of(station).Median;

    private static (double[] Values, double[] LogWeights) Axis(Spread usual, Spread? factor)
    {
        var (middle, spread) = (Units.From(usual.Median, "kPa") * (factor?.Median ?? 1), double.Hypot(usual.LogSpread, factor?.LogSpread ?? 0));
        var (values, weights) = (new double[Places], new double[Places]);
        for (var k = 0; k < Places; k++)
        {
            var z = Reach * ((2.0 * k / (Places - 1)) - 1);
            (values[k], weights[k]) = (middle * Math.Exp(spread * z), Normal.LogDensity(z) + Math.Log(2 * Reach / (Places - 1)));
        }

        return (values, weights);
    }

    private static (double Mean, double Spread) Moments(double[] shares, Func<int, double> value)
    {
        var (mean, square) = (0.0, 0.0);
        for (var k = 0; k < shares.Length; k++)
        {
            mean += shares[k] * value(k);
            square += shares[k] * value(k) * value(k);
        }

        return (mean, Math.Sqrt(Math.Max(0, square - (mean * mean))));
    }
}
