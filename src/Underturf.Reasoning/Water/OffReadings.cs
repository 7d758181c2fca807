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
    private readonly double[] likeliest;
    private readonly Dictionary<string, double[]> tables = new(StringComparer.Ordinal);

    public OffReadings(WaterCase owner, IReadOnlyList<WaterReading> meter)
    {
        this.owner = owner;
        readings = [.. meter.Select((r, k) => (r, k)).Where(r => r.r.IsIdle)];
        chances = [.. readings.Select(r => Enumerable.Range(0, AmountGrid.Count * AmountGrid.Parts).Select(p => LogChance(r.Reading, AmountGrid.AtPart(p))).ToArray())];
        likeliest = [.. chances.Select(c => c.Max())];
    }

    public int Count => readings.Length;

    public double LogChanceUnmodelled
    {
        get
        {
            var (least, most) = (Units.From(owner.Water.LeastLitresPerMinute, "L/min"), Units.From(owner.Water.MostLitresPerMinute, "L/min"));
            var even = -Math.Log(Math.Log(most / least));
            return readings.Sum(r => even - Math.Log(Math.Max(r.Reading.Si, least)));
        }
    }

    /// <summary>ln of the chance of all of them while so much runs; what doubted valves let through is summed over.</summary>
    public double LogChance(Fed fed, int amount)
    {
        if (!tables.TryGetValue(fed.Key, out var table))
        {
            tables[fed.Key] = table = [.. Enumerable.Range(0, AmountGrid.Count).Select(a => Summed(fed, a))];
        }

        return table[amount];
    }

    /// <summary>Two amounts at once, where they are worth a sum, with ln of the chance of all readings.</summary>
    /// <param name="step">Every so many places of the grid.</param>
    public IEnumerable<(int First, int Second, double Log)> OfTwo(Fed one, Fed two, int mostOne, int mostTwo, int step)
    {
        int[] passing = [.. Enumerable.Range(0, readings.Length).Where(r => Passing(one, r) || Passing(two, r))];
        var plain = Enumerable.Range(0, readings.Length).Except(passing).Select(r => (Row: chances[r], Most: likeliest[r], One: one[readings[r].Index].Shows ? 1 : 0, Two: two[readings[r].Index].Shows ? 1 : 0)).ToArray();
        var levels = passing.Length == 0 ? [] : Levels([.. one.Through.Union(two.Through).Order()], 3, 10).ToArray();
        var most = likeliest.Sum();
        for (var a = 1; a <= mostOne; a += step)
        {
            for (var b = 1; b <= mostTwo; b += step)
            {
                var log = most;
                for (var k = 0; k < plain.Length && log >= most - Worthless; k++)
                {
                    var (row, top, first, second) = plain[k];
                    log += row[AmountGrid.PartOf(first * a, second * b)] - top;
                }

                if (log >= most - Worthless)
                {
                    yield return (a, b, log + Through(passing, levels, one, two, a, b));
                }
            }
        }
    }

    /// <summary>ln of the chance of what passes valves that do not hold, beside the likeliest of each reading.</summary>
    private double Through(int[] passing, Level[] levels, Fed one, Fed two, int first, int second)
    {
        if (passing.Length == 0)
        {
            return 0;
        }

        var sum = 0.0;
        foreach (var level in levels)
        {
            var log = level.LogWeight;
            foreach (var r in passing)
            {
                var index = readings[r].Index;
                log += chances[r][AmountGrid.PartOf(level.Left(one[index], first), level.Left(two[index], second))] - likeliest[r];
            }

            sum += Math.Exp(log);
        }

        return Math.Log(Math.Max(sum, double.Epsilon));
    }

    private bool Passing(Fed fed, int reading) => fed[readings[reading].Index].First >= 0;

    private double Summed(Fed fed, int amount)
    {
        if (!Enumerable.Range(0, readings.Length).Any(r => Passing(fed, r)))
        {
            return readings.Select((r, k) => chances[k][fed[r.Index].Shows ? amount * AmountGrid.Parts : 0]).Sum();
        }

        return LogMath.LogSumExp([.. Levels(fed.Through, 1, 24).Select(l => l.LogWeight + readings.Select((r, k) => chances[k][l.Left(fed[r.Index], amount) * AmountGrid.Parts]).Sum())]);
    }

    /// <summary>What one or two doubted valves let through: of one finely, of two in so many parts each.</summary>
    private static List<Level> Levels(IReadOnlyList<int> valves, int step, int parts) => valves switch
    {
        [] => [new Level(-1, 0, 0, 0)],
        [var one] => [.. PassingShares.Fine(step).Select(s => new Level(one, s.Less, 0, s.LogWeight))],
        [var one, ..] => [.. from s in PassingShares.Coarse(parts) from t in PassingShares.Coarse(parts) select new Level(one, s.Less, t.Less, s.LogWeight + t.LogWeight)],
    };

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

    /// <param name="One">The valve that lets <paramref name="First"/> places less through; any other lets <paramref name="Second"/> less.</param>
    private readonly record struct Level(int One, int First, int Second, double LogWeight)
    {
        /// <summary>Place of what is left of an amount.</summary>
        public int Left(Passage passage, int amount) => amount == 0 ? 0 : Math.Max(0, amount - passage.PlacesLess(One, First, Second));
    }
}
