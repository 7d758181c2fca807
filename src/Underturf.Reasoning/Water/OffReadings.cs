using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>The readings of the meter with everything off, and how likely each is while something runs.</summary>
internal sealed class OffReadings
{
    /// <summary>ln of what is no longer worth a sum.</summary>
    private const double Worthless = 25;

    private readonly WaterCase owner;
    private readonly (WaterReading Reading, int Index)[] readings;
    private readonly double[][] chances;

    public OffReadings(WaterCase owner, IReadOnlyList<WaterReading> meter)
    {
        this.owner = owner;
        readings = [.. meter.Select((r, k) => (r, k)).Where(r => r.r.Station is null)];
        chances = [.. readings.Select(r => Enumerable.Range(0, AmountGrid.Count).Select(a => LogChance(r.Reading, AmountGrid.At(a))).ToArray())];
        Floor = chances.Sum(c => c.Max()) - Worthless;
    }

    public int Count => readings.Length;

    /// <summary>ln of the chance below which a set of sources does not count.</summary>
    public double Floor { get; }

    public double LogChanceUnmodelled
    {
        get
        {
            var (least, most) = (Units.From(owner.Water.LeastLitresPerMinute, "L/min"), Units.From(owner.Water.MostLitresPerMinute, "L/min"));
            var even = -Math.Log(Math.Log(most / least));
            return readings.Sum(r => even - Math.Log(Math.Max(r.Reading.Si, least)));
        }
    }

    public double LogChance(Fed fed, int amount)
    {
        var sum = 0.0;
        for (var r = 0; r < readings.Length; r++)
        {
            sum += chances[r][fed[readings[r].Index] ? amount : 0];
        }

        return sum;
    }

    /// <summary>Of those readings alone in which two amounts show together; the others as if nothing ran.</summary>
    public double LogChanceOfSum(Fed both, double runs)
    {
        var sum = 0.0;
        foreach (var (row, (reading, index)) in readings.Index())
        {
            sum += both[index] ? LogChance(reading, runs) : chances[row][0];
        }

        return sum;
    }

    /// <summary>With what others may have drawn just then.</summary>
    private double LogChance(WaterReading reading, double runs)
    {
        var alone = Normal.LogDensity((reading.Si - runs) / reading.Sigma) - Math.Log(reading.Sigma);
        foreach (var use in owner.Water.Of(WaterScope.Elsewhere))
        {
            var drawn = Amount.Of(use.LeaksLitresPerMinute!, "L/min").Base;
            var more = reading.Si - runs > reading.Sigma ? drawn.LogDensity(reading.Si - runs) : double.NegativeInfinity;
            alone = LogMath.LogAdd(alone + Math.Log(1 - use.Rate), more + Math.Log(use.Rate));
        }

        return alone;
    }
}
