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

    private const double Reach = WeighedRange.Reach;

    /// <summary>What is left of the pressure at least: below it the loss is not to be believed.</summary>
    private const double LeastShare = 0.05;

    private readonly WaterCase owner;
    private readonly StationFlows flows;
    private readonly Dictionary<(string State, WaterReading? Except), (double[] Statics, double[] Losses, double[] LogWeights)> grids = [];

    public SupplyWater(WaterCase owner, StationFlows flows)
    {
        (this.owner, this.flows) = (owner, flows);
        States = SupplyState.All(owner.Water);
        Devices = owner.DevicesOf(owner.MeterPlace);
        Readings = [.. owner.Readings.Where(r => r.Probe.Measures is WaterMeasure.StaticPressure or WaterMeasure.RunningPressure)];
    }

    public IReadOnlyList<WaterReading> Readings { get; }

    /// <summary>The one in order first.</summary>
    public IReadOnlyList<SupplyState> States { get; }

    /// <summary>Meter and backflow device, whose losses go another way with the flow than friction does.</summary>
    public SupplyDevices Devices { get; }

    /// <summary>What is lost on the way at a flow, of so much at the usual one: what the devices do not take grows as friction does. Where less is lost than they should take, they take the less.</summary>
    public double LossAt(double lossPascals, double flow)
    {
        if (Devices.All.Count == 0)
        {
            return lossPascals * ShareOf(flow);
        }

        var usual = Devices.LossPascals(UsualFlow);
        return lossPascals < usual ? Devices.LossPascals(flow) * lossPascals / usual : ((lossPascals - usual) * ShareOf(flow)) + Devices.LossPascals(flow);
    }

    /// <summary>The street and the way to the gauge for a network, the devices left out: static head and what friction takes.</summary>
    public (SupplyCurve Curve, double DeviceFactor) Way(double levelPascals, double lossPascals)
    {
        var (usual, perMetre) = (Devices.LossPascals(UsualFlow), owner.Fluid.PascalsPerMetre);
        return (new SupplyCurve(levelPascals / perMetre, Math.Max(0, lossPascals - usual) / perMetre / Math.Pow(UsualFlow, HazenWilliams.FlowExponentNumber)), usual > 0 ? Math.Min(1, lossPascals / usual) : 1);
    }

    /// <summary>ln of the chance of all pressures under a state of the supply.</summary>
    /// <param name="except">A reading to leave out.</param>
    public double LogChance(SupplyState state, WaterReading? except = null) => Readings.Count == 0 ? 0 : LogMath.LogSumExp(Grid(state, except).LogWeights);

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
    public (double Static, double StaticSpread, double Loss, double LossSpread) Believed(SupplyState state)
    {
        var (statics, losses, logs) = Grid(state);
        var total = LogMath.LogSumExp(logs);
        double[] shares = [.. logs.Select(l => Math.Exp(l - total))];
        var (p, ps) = Moments(shares, k => statics[k / Places]);
        var (l, ls) = Moments(shares, k => losses[k % Places]);
        return (p, ps, l, ls);
    }

    /// <summary>What the street gave as it was built, its faults taken away, by all pressures that were read: over the states of the supply.</summary>
    public LogNormal Built()
    {
        double[] logs = [.. States.Select(s => s.LogPrior + LogChance(s))];
        var total = LogMath.LogSumExp(logs);
        var (mean, square) = (0.0, 0.0);
        foreach (var (state, log) in States.Zip(logs))
        {
            var (statics, _, weights) = Grid(state);
            var (sum, factor) = (LogMath.LogSumExp(weights), state.Factor(f => f.StaticFactor)?.Median ?? 1);
            for (var k = 0; k < weights.Length; k++)
            {
                var (share, level) = (Math.Exp(log - total + weights[k] - sum), Math.Log(statics[k / Places] / factor));
                (mean, square) = (mean + (share * level), square + (share * level * level));
            }
        }

        return new LogNormal(Math.Exp(mean), Math.Sqrt(Math.Max(0, square - (mean * mean))));
    }

    /// <summary>
    /// Readings of the meter, each with what a leak runs then: q = k p^x at the point of connection, by the pressures that are believed on average over the
    /// states of the supply.
    /// </summary>
    public IReadOnlyList<WaterReading> DrawnDown(IEnumerable<WaterReading> meter)
    {
        double[] logs = [.. States.Select(s => s.LogPrior + LogChance(s))];
        var total = LogMath.LogSumExp(logs);
        var believed = States.Select((s, k) => (Share: Math.Exp(logs[k] - total), Believed: Believed(s))).ToList();
        return [.. meter.Select(r => r.IsIdle ? r : r with { Drawn = believed.Sum(b => b.Share * Left(b.Believed.Static, LossAt(b.Believed.Loss, FlowOf(r)))) })];
    }

    private double Left(double rest, double loss) => Math.Pow(Math.Max(LeastShare, 1 - (loss / rest)), owner.Water.LeakExponent);

    /// <summary>
    /// What stations give together, as a share of what each gives alone: q = k p^x at their outlets, the pressure less by what is lost on the way at the flow
    /// of all. Its spread is that of the loss.
    /// </summary>
    /// <param name="alone">Flow of each.</param>
    public (double Share, double Spread) Together(SupplyState state, IReadOnlyList<double> alone)
    {
        var (level, _, loss, lossSpread) = Believed(state);
        var sum = alone.Sum();
        double Left(double flow, double lost) => Math.Max(LeastShare, 1 - (LossAt(lost, flow) / level));
        double Share(double lost) => Halving.Of(share => (alone.Sum(q => q * Math.Pow(Left(share * sum, lost) / Left(q, lost), owner.Water.Outlets[0].Exponent)) / sum) - share);
        return (Share(loss), Math.Abs(Share(loss + Math.Min(lossSpread, 0.9 * loss)) - Share(loss - Math.Min(lossSpread, 0.9 * loss))) / 2);
    }

    /// <summary>What a gauge is expected to show, before any pressure was read.</summary>
    public Amount Expected(SupplyState state, WaterReading reading)
    {
        var (level, loss, share) = (Amount(owner.Water.Usual.StaticKilopascals, state.Factor(f => f.StaticFactor)), Amount(UsualLoss, state.Factor(f => f.LossFactor)), 0.0);
        share = LossAt(loss.Median, FlowOf(reading)) / loss.Median;
        var middle = Math.Max(level.Median - (share * loss.Median), reading.Sigma);
        return Water.Amount.Like(middle, Math.Min(middle, double.Hypot(level.Median * level.Base.LogSpread, share * loss.Median * loss.Base.LogSpread)));
    }

    /// <summary>Flow at which the usual loss is reckoned.</summary>
    public double UsualFlow => Units.From(owner.Water.Usual.StationLitresPerMinute.Median, "L/min");

    /// <summary>Once for all that have the same faults.</summary>
    private (double[] Statics, double[] Losses, double[] LogWeights) Grid(SupplyState state, WaterReading? except = null)
    {
        var key = (state.Id, except);
        return grids.TryGetValue(key, out var known) ? known : grids[key] = MakeGrid(state, except);
    }

    private (double[] Statics, double[] Losses, double[] LogWeights) MakeGrid(SupplyState state, WaterReading? except)
    {
        var usual = owner.Water.Usual;
        var (statics, staticWeights) = Axis(usual.StaticKilopascals, state.Factor(f => f.StaticFactor));
        var (losses, lossWeights) = Axis(UsualLoss, state.Factor(f => f.LossFactor));
        var logs = new double[Places * Places];
        var gauges = Readings.Where(r => r != except).GroupBy(r => r.Probe.Instrument).Select(g => new GaugeReadings([.. g])).ToList();
        for (var k = 0; k < logs.Length; k++)
        {
            logs[k] = staticWeights[k / Places] + lossWeights[k % Places] + gauges.Sum(g => g.LogDensity(r => Stands(r, state, statics[k / Places], losses[k % Places])));
        }

        return (statics, losses, logs);
    }

    /// <summary>What stands at the gauge.</summary>
    private double Stands(WaterReading reading, SupplyState state, double staticPascals, double lossPascals)
    {
        var (level, loss) = (staticPascals, lossPascals);
        foreach (var cured in state.Faults.Where(f => owner.IsCured(f, [], reading.Moment)))
        {
            (level, loss) = (level / (cured.StaticFactor?.Median ?? 1), loss / (cured.LossFactor?.Median ?? 1));
        }

        return level - LossAt(loss, FlowOf(reading));
    }

    private Spread UsualLoss => owner.Water.Usual.LossKilopascals with { Median = Units.In(Devices.UsualLossPascals, "kPa") };

    private double FlowOf(WaterReading reading) => reading.IsIdle ? 0 : FlowOf(reading.Running);

    /// <summary>Of what friction takes at the usual flow.</summary>
    private double ShareOf(double flow) => Math.Pow(flow / UsualFlow, HazenWilliams.FlowExponentNumber);

    private static Amount Amount(Spread usual, Spread? factor) => Water.Amount.Of(usual, "kPa").Times(factor);

    /// <summary>As the meter showed it, or as it is to be expected.</summary>
    private double FlowOf(IReadOnlyList<string> running) => owner.Of(WaterMeasure.MeterFlow).LastOrDefault(r => r.Running.SequenceEqual(running))?.Si
        ?? (running is [var station] ? flows.Of(station).Median : running.Sum(r => FlowOf([r])));

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
