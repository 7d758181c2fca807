using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>Sums over the states of the supply, over none, one or two groups of sources that run, and over their amounts.</summary>
internal sealed class WaterSum
{
    /// <summary>Two amounts at once are summed over every so many places of the grid.</summary>
    private const int Coarse = 2;

    /// <summary>ln of a share of the likeliest below which a cell counts for nothing.</summary>
    private const double Worthless = -25;

    /// <summary>Standard deviations above a reading beyond which nothing can have run.</summary>
    private const double Beyond = 8;

    private readonly WaterCase owner;
    private readonly IReadOnlyList<WaterReading> meter;
    private readonly IReadOnlyList<StationWater> stations;
    private readonly IReadOnlyList<WaterFault?> supplies;
    private readonly SupplyWater supply;
    private readonly OffReadings off;
    private readonly Fed nowhere;
    private readonly Dictionary<(int Supply, string Fed), double[]> besides = [];
    private readonly Dictionary<(int Supply, int Group), double[]> weights = [];

    public WaterSum(WaterCase owner, IReadOnlyList<WaterReading> meter, IReadOnlyList<LeakSource> sources, IReadOnlyList<StationWater> stations, IReadOnlyList<WaterFault?> supplies, SupplyWater supply)
    {
        (this.owner, this.meter, this.stations, this.supplies, this.supply) = (owner, meter, stations, supplies, supply);
        nowhere = Fed.Nowhere(meter.Count);
        off = new OffReadings(owner, meter);
        Groups = [.. sources.GroupBy(s => s.Signature).Select(g => new LeakGroup(g.First().Fault, g.First().Fed, [.. g]))];
        var all = new List<Cell>();
        for (var s = 0; s < supplies.Count; s++)
        {
            AddCells(s, all);
        }

        var most = all.Max(c => c.Log);
        var scale = LogMath.LogSumExp([.. all.Select(c => c.Log)]);
        Cells = [.. all.Where(c => c.Log > most + Worthless).Select(c => c with { Log = Math.Exp(c.Log - scale) }).Select(c => new WeighedCell(c.Supply, c.First, c.Second, c.A, c.B, c.Log))];
        SupplyShares = [.. supplies.Select((_, s) => Cells.Where(c => c.Supply == s).Sum(c => c.Share))];
        Unmodelled = UnmodelledShare(scale);
    }

    /// <summary>Sources that no reading tells apart.</summary>
    public IReadOnlyList<LeakGroup> Groups { get; }

    /// <summary>Everything that is worth a share; their shares sum to one.</summary>
    public IReadOnlyList<WeighedCell> Cells { get; }

    public IReadOnlyList<double> SupplyShares { get; }

    /// <summary>Chance that the readings with everything off have a cause that the book does not know.</summary>
    public double Unmodelled { get; }

    /// <summary>Odds of a group's sources; the station of each does not show what its own valve lets through.</summary>
    public IEnumerable<double> SourceOdds(int supplyState, int group, int amount)
    {
        foreach (var source in Groups[group].Sources)
        {
            var own = source.Station is null ? null : stations.FirstOrDefault(s => s.Station == source.Station && s.HasFlow);
            yield return source.Odds * (own is null ? 1 : Math.Exp(own.LogChance(supplies[supplyState], nowhere, 0) - own.LogChance(supplies[supplyState], Groups[group].Fed, amount)));
        }
    }

    /// <summary>A station's states, all that may run beside it counted in.</summary>
    public double[] SharesOf(StationWater station)
    {
        var shares = new double[station.States.Count];
        foreach (var beside in Cells.GroupBy(c => (c.Supply, Key: FedOf(c).Key, Amount: station.HasFlow ? AmountOf(c) : 0)))
        {
            var logs = station.LogChances(supplies[beside.Key.Supply], FedOf(beside.First()), beside.Key.Amount);
            var (total, weight) = (LogMath.LogSumExp(logs), beside.Sum(c => c.Share));
            for (var k = 0; k < shares.Length; k++)
            {
                shares[k] += weight * Math.Exp(logs[k] - total);
            }
        }

        return shares;
    }

    private Fed FedOf(WeighedCell cell) => cell.Second >= 0 ? Union(cell.First, cell.Second) : cell.First >= 0 ? Groups[cell.First].Fed : nowhere;

    private readonly Dictionary<(int First, int Second), Fed> unions = [];

    private Fed Union(int first, int second)
    {
        if (!unions.TryGetValue((first, second), out var union))
        {
            unions[(first, second)] = union = Groups[first].Fed.Or(Groups[second].Fed);
        }

        return union;
    }

    private static int AmountOf(WeighedCell cell) => cell.Second < 0 ? cell.A : AmountGrid.Nearest(AmountGrid.At(cell.A) + AmountGrid.At(cell.B));

    private void AddCells(int state, List<Cell> cells)
    {
        var fault = supplies[state];
        var begin = owner.Water.Of(WaterScope.Supply).Sum(f => Math.Log(f == fault ? f.Rate : 1 - f.Rate)) + supply.LogChance(fault);
        var none = Besides(state, nowhere)[0];
        cells.Add(new Cell(state, -1, -1, 0, 0, begin + off.LogChance(nowhere, 0) + none));
        for (var g = 0; g < Groups.Count; g++)
        {
            var (fed, more) = (Groups[g].Fed, Weights(state, g));
            var beside = Besides(state, fed);
            for (var a = 1; a <= MostPlace(fed); a++)
            {
                cells.Add(new Cell(state, g, -1, a, 0, begin + more[a] + off.LogChance(fed, a) + Value(beside, state, fed, a)));
            }

            for (var h = 0; h < g; h++)
            {
                // What shows in the same readings as one source would is not told apart from it.
                if (Groups[h].Fed.Key != fed.Key)
                {
                    AddPair(state, h, g, begin - none, cells);
                }
            }
        }
    }

    private void AddPair(int state, int first, int second, double begin, List<Cell> cells)
    {
        var (one, two) = (Groups[first].Fed, Groups[second].Fed);
        var (both, onlyOne, onlyTwo) = (one.And(two), one.Without(two), two.Without(one));
        var (tableBoth, tableOne, tableTwo) = (Besides(state, both), Besides(state, onlyOne), Besides(state, onlyTwo));
        var none = Besides(state, nowhere)[0];
        var (mostOne, mostTwo) = (MostPlace(one), MostPlace(two));
        var (step, nothing) = (2 * Math.Log(Coarse), off.LogChance(nowhere, 0));
        for (var a = 1; a <= mostOne; a += Coarse)
        {
            var partA = begin + step + Weights(state, first)[a] + off.LogChance(onlyOne, a) + Value(tableOne, state, onlyOne, a) - none;
            for (var b = 1; b <= mostTwo; b += Coarse)
            {
                var log = off.LogChance(onlyTwo, b) + off.LogChanceOfSum(both, AmountGrid.At(a) + AmountGrid.At(b)) - (2 * nothing);
                if (log + off.LogChance(onlyOne, a) < off.Floor)
                {
                    continue;
                }

                var sum = AmountGrid.Nearest(AmountGrid.At(a) + AmountGrid.At(b));
                cells.Add(new Cell(state, first, second, a, b, partA + log + Weights(state, second)[b] + Value(tableBoth, state, both, sum) + Value(tableTwo, state, onlyTwo, b)));
            }
        }
    }

    /// <summary>The largest amount that the readings in which it shows leave room for.</summary>
    private int MostPlace(Fed fed)
    {
        var most = Enumerable.Range(0, meter.Count).Where(r => fed[r]).Select(r => meter[r].Si + (Beyond * meter[r].Sigma)).DefaultIfEmpty(double.PositiveInfinity).Min();
        return double.IsInfinity(most) ? AmountGrid.Count - 1 : AmountGrid.Nearest(most);
    }

    /// <summary>ln of the odds of a group with each amount.</summary>
    private double[] Weights(int state, int group)
    {
        if (!weights.TryGetValue((state, group), out var table))
        {
            var leaks = Groups[group].Fault.LeaksLitresPerMinute!;
            var amounts = AmountGrid.Weights(new LogNormal(Units.From(leaks.Median, "L/min"), leaks.LogSpread));
            var most = MostPlace(Groups[group].Fed);
            weights[(state, group)] = table = [.. amounts.Select((w, a) => a == 0 || a > most ? double.NegativeInfinity : Math.Log(w * SourceOdds(state, group, a).Sum()))];
        }

        return table;
    }

    /// <summary>ln of the chance of all stations' notes, by the amount that runs elsewhere; filled as it is asked for.</summary>
    private double[] Besides(int state, Fed fed)
    {
        if (!besides.TryGetValue((state, fed.Key), out var table))
        {
            besides[(state, fed.Key)] = table = new double[AmountGrid.Count];
            Array.Fill(table, double.NaN);
            Value(table, state, fed, 0);
        }

        return table;
    }

    private double Value(double[] table, int state, Fed fed, int amount)
    {
        if (double.IsNaN(table[amount]))
        {
            table[amount] = stations.Sum(s => s.LogChance(supplies[state], fed, amount));
        }

        return table[amount];
    }

    /// <summary>Spread evenly over what a meter can show.</summary>
    private double UnmodelledShare(double scale)
    {
        if (off.Count == 0)
        {
            return 0;
        }

        var other = Math.Log(owner.Water.Unmodelled) + off.LogChanceUnmodelled + LogMath.LogSumExp([.. supplies.Select((f, s) =>
            owner.Water.Of(WaterScope.Supply).Sum(k => Math.Log(k == f ? k.Rate : 1 - k.Rate)) + supply.LogChance(f) + Besides(s, nowhere)[0])]);
        return 1 / (1 + Math.Exp(scale - other));
    }

    private readonly record struct Cell(int Supply, int First, int Second, int A, int B, double Log);
}

/// <summary>One state of the supply, none, one or two groups that run, and their amounts; groups that are not there have the number -1.</summary>
internal readonly record struct WeighedCell(int Supply, int First, int Second, int A, int B, double Share);
