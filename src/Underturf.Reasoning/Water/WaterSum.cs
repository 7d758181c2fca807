using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>Sums over the states of the supply, over none, one or two groups of sources that run, and over their amounts.</summary>
internal sealed class WaterSum
{
    /// <summary>Two amounts at once are summed over every so many places of the grid.</summary>
    private const int Coarse = 2;

    /// <summary>ln of a share of the likeliest below which a cell counts for nothing.</summary>
    private const double Worthless = -14;

    /// <summary>Standard deviations above a reading beyond which nothing can have run.</summary>
    private const double Beyond = 8;

    private readonly WaterCase owner;
    private readonly IReadOnlyList<WaterReading> meter;
    private readonly IReadOnlyList<StationWater> stations;
    private readonly List<SupplyState> supplies;
    private readonly double[] begins;
    private readonly OffReadings off;
    private readonly LeakGroups groups;
    private readonly int[] running;
    private readonly Dictionary<(int First, int Second), List<(int First, int Second, double Log)>> pairs = [];
    private readonly Fed nowhere;
    private readonly Dictionary<(int Supply, string Fed), double[]> besides = [];
    private readonly Dictionary<(int Supply, int Group), double[]> weights = [];
    private readonly Dictionary<string, Fed> alike = new(StringComparer.Ordinal);
    private readonly Dictionary<(int Supply, Fed Fed, int Amount, WaterFault? Leaking), double> runningBeside;
    private readonly Dictionary<string, StationWater> telling;
    private readonly Dictionary<(string Station, int Supply, int Group, int Amount), double> ownShares = [];
    private double likeliest = double.NegativeInfinity;

    public WaterSum(WaterCase owner, IReadOnlyList<WaterReading> meter, LeakGroups groups, IReadOnlyList<StationWater> stations, SupplyWater supply)
    {
        (this.owner, this.meter, this.groups, this.stations) = (owner, meter, groups, stations);
        supplies = [.. supply.States.Select(s => s.Felt).Distinct()];
        double[] logs = [.. supply.States.Select(s => s.LogPrior + supply.LogChance(s))];
        begins = [.. supplies.Select(f => LogMath.LogSumExp([.. logs.Where((_, k) => supply.States[k].Felt == f)]))];
        telling = stations.Where(s => s.HasFlow || s.IsSeenIdle).ToDictionary(s => s.Station, StringComparer.Ordinal);
        nowhere = Fed.Nowhere(meter.Count);
        off = new OffReadings(owner, meter);
        running = [.. Enumerable.Range(0, meter.Count).Where(r => !meter[r].IsIdle)];
        var all = new List<Cell>();
        double[] alone = [.. supplies.Select((_, k) => begins[k] + Besides(k, nowhere)[0])];
        foreach (var state in Enumerable.Range(0, supplies.Count).Where(s => alone[s] > alone.Max() + Worthless).OrderByDescending(s => alone[s]))
        {
            AddCells(state, all);
        }

        all.RemoveAll(c => c.Log < likeliest + Worthless);
        var scale = LogMath.LogSumExp([.. all.Select(c => c.Log)]);
        Cells = [.. all.Select(c => new WeighedCell(c.Supply, c.First, c.Second, c.A, c.B, Math.Exp(c.Log - scale)))];
        runningBeside = Beside();
        double[] shares = [.. supplies.Select((_, s) => Cells.Where(c => c.Supply == s).Sum(c => c.Share))];
        SupplyShares = [.. supply.States.Select((s, k) => (Log: logs[k], Felt: supplies.IndexOf(s.Felt))).Select(s => shares[s.Felt] * Math.Exp(s.Log - begins[s.Felt]))];
        Unmodelled = UnmodelledShare(scale);
    }

    /// <summary>Sources that no reading tells apart.</summary>
    public IReadOnlyList<LeakGroup> Groups => groups.All;

    /// <summary>Everything that is worth a share; their shares sum to one.</summary>
    public IReadOnlyList<WeighedCell> Cells { get; }

    public IReadOnlyList<double> SupplyShares { get; }

    /// <summary>Chance that the readings with everything off have a cause that the book does not know.</summary>
    public double Unmodelled { get; }

    /// <summary>Odds of a group's sources; the station of each does not show what its own valve lets through while it runs, and may show it while everything is off.</summary>
    public IEnumerable<double> SourceOdds(int supplyState, int group, int amount)
    {
        foreach (var source in Groups[group].Sources)
        {
            var own = source.Station is null ? null : telling.GetValueOrDefault(source.Station);
            yield return source.Odds * (own is null ? 1 : Math.Exp(own.LogChance(supplies[supplyState], nowhere, 0, Shown(source, own)) - own.LogChance(supplies[supplyState], Groups[group].Fed, amount)));
        }
    }

    /// <summary>Chance that a doubted valve does not hold.</summary>
    public double Passes(int valve) => Cells.GroupBy(c => (c.First, c.Second)).Sum(g => g.Sum(c => c.Share) * groups.Passes(valve, g.Key.First, g.Key.Second));

    /// <summary>A station's states, all that may run beside it counted in.</summary>
    public double[] SharesOf(StationWater station)
    {
        var shares = new double[station.States.Count];
        foreach (var ((state, fed, amount, leaking), weight) in station.IsSeenIdle ? Beside(station) : runningBeside)
        {
            var logs = station.LogChances(supplies[state], fed, station.HasFlow ? amount : 0, leaking);
            var total = LogMath.LogSumExp(logs);
            for (var k = 0; k < shares.Length; k++)
            {
                shares[k] += weight * Math.Exp(logs[k] - total);
            }
        }

        return shares;
    }

    /// <summary>What may run beside a station, and how likely: what comes to the same is one.</summary>
    /// <param name="station">Where its own valve may show what it lets through, apart from all others.</param>
    private Dictionary<(int Supply, Fed Fed, int Amount, WaterFault? Leaking), double> Beside(StationWater? station = null)
    {
        var sums = new Dictionary<(int Supply, Fed Fed, int Amount, WaterFault? Leaking), double>();
        void Count((int Supply, Fed Fed, int Amount, WaterFault? Leaking) key, double share) => sums[key] = sums.GetValueOrDefault(key) + share;
        foreach (var cell in Cells)
        {
            var others = 1.0;
            (int Group, int Amount, int Other, int OtherAmount)[] ways = station is null ? [] : [(cell.First, cell.A, cell.Second, cell.B), (cell.Second, cell.B, cell.First, cell.A)];
            foreach (var (group, amount, other, otherAmount) in ways.Where(w => w.Group >= 0))
            {
                var own = Math.Min(others, OwnShare(station!, cell.Supply, group, amount));
                others -= own;
                if (own > 0)
                {
                    Count((cell.Supply, Alike(other < 0 ? nowhere : Groups[other].Fed), otherAmount, Groups[group].Fault), own * cell.Share);
                }
            }

            Count((cell.Supply, FedOf(cell), AmountOf(cell), null), others * cell.Share);
        }

        return sums;
    }

    /// <summary>Chance that it is the station's own valve, of a group that runs.</summary>
    private double OwnShare(StationWater station, int supplyState, int group, int amount)
    {
        var key = (station.Station, supplyState, group, amount);
        if (!ownShares.TryGetValue(key, out var share) && Groups[group].Sources.Any(s => s.Station == station.Station))
        {
            var odds = SourceOdds(supplyState, group, amount).Zip(Groups[group].Sources).ToList();
            ownShares[key] = share = odds.Where(o => o.Second.Station == station.Station).Sum(o => o.First) / odds.Sum(o => o.First);
        }

        return share;
    }

    /// <summary>What a station that was looked at while everything was off may have shown of its own valve.</summary>
    private static WaterFault? Shown(LeakSource source, StationWater own) => own.IsSeenIdle ? source.Fault : null;

    private Fed FedOf(WeighedCell cell) => Alike(cell.First < 0 ? nowhere : cell.Second < 0 ? Groups[cell.First].Fed : Groups[cell.First].Fed.Or(Groups[cell.Second].Fed));

    /// <summary>One for all that show in the same readings of stations.</summary>
    private Fed Alike(Fed fed)
    {
        var key = fed.KeyOf(running);
        return alike.TryGetValue(key, out var first) ? first : alike[key] = fed;
    }

    private static int AmountOf(WeighedCell cell) => cell.Second < 0 ? cell.A : AmountGrid.Both(cell.A, cell.B);

    private void AddCells(int state, List<Cell> cells)
    {
        var begin = begins[state];
        var none = Besides(state, nowhere)[0];
        Add(cells, new Cell(state, -1, -1, 0, 0, begin + off.LogChance(nowhere, 0) + none));
        for (var g = 0; g < Groups.Count; g++)
        {
            var (fed, more) = (Groups[g].Fed, Weights(state, g));
            var (beside, prior) = (Besides(state, fed), begin + groups.LogPrior(g));
            for (var a = 1; a <= MostPlace(fed); a++)
            {
                Add(cells, new Cell(state, g, -1, a, 0, prior + more[a] + off.LogChance(fed, a) + Value(beside, state, fed, a)));
            }
        }

        for (var g = 0; g < Groups.Count; g++)
        {
            for (var h = 0; h < g; h++)
            {
                // What shows in the same readings as one source would is not told apart from it.
                if (Groups[h].Fed.Key != Groups[g].Fed.Key && groups.LogPrior(h, g) > double.NegativeInfinity)
                {
                    AddPair(state, h, g, begin, cells);
                }
            }
        }
    }

    /// <summary>Unless it is worth nothing beside what was found before.</summary>
    private void Add(List<Cell> cells, Cell cell)
    {
        if (cell.Log > likeliest + Worthless)
        {
            cells.Add(cell);
            likeliest = Math.Max(likeliest, cell.Log);
        }
    }

    private void AddPair(int state, int first, int second, double begin, List<Cell> cells)
    {
        var (one, two) = (Groups[first].Fed, Groups[second].Fed);
        var (both, onlyOne, onlyTwo) = (one.And(two), one.Without(two), two.Without(one));
        var (tableBoth, tableOne, tableTwo) = (Besides(state, both), Besides(state, onlyOne), Besides(state, onlyTwo));
        var none = 2 * Besides(state, nowhere)[0];
        begin += (2 * Math.Log(Coarse)) + groups.LogPrior(first, second) - none;
        foreach (var (a, b, log) in Pairs(first, second))
        {
            var sum = AmountGrid.Both(a, b);
            Add(cells, new Cell(state, first, second, a, b, begin + log + Weights(state, first)[a] + Weights(state, second)[b]
                + Value(tableBoth, state, both, sum) + Value(tableOne, state, onlyOne, a) + Value(tableTwo, state, onlyTwo, b)));
        }
    }

    /// <summary>The same under every state of the supply.</summary>
    private List<(int First, int Second, double Log)> Pairs(int first, int second)
    {
        if (!pairs.TryGetValue((first, second), out var known))
        {
            var (one, two) = (Groups[first].Fed, Groups[second].Fed);
            pairs[(first, second)] = known = [.. off.OfTwo(one, two, MostPlace(one), MostPlace(two), Coarse)];
        }

        return known;
    }

    /// <summary>The largest amount that the readings in which it shows leave room for.</summary>
    private int MostPlace(Fed fed)
    {
        var most = Enumerable.Range(0, meter.Count).Where(r => fed[r].Kind == PassageKind.Open).Select(r => (meter[r].Si + (Beyond * meter[r].Sigma)) / meter[r].Drawn).DefaultIfEmpty(double.PositiveInfinity).Min();
        return double.IsInfinity(most) ? AmountGrid.Count - 1 : AmountGrid.Nearest(most);
    }

    /// <summary>ln of the odds of a group with each amount.</summary>
    private double[] Weights(int state, int group)
    {
        if (!weights.TryGetValue((state, group), out var table))
        {
            var amounts = AmountGrid.Weights(Amount.Of(Groups[group].Fault.LeaksLitresPerMinute!, "L/min").Base);
            var most = MostPlace(Groups[group].Fed);
            weights[(state, group)] = table = [.. amounts.Select((w, a) => a == 0 || a > most ? double.NegativeInfinity : Math.Log(w * SourceOdds(state, group, a).Sum()))];
        }

        return table;
    }

    /// <summary>ln of the chance of all stations' notes, by the amount that runs elsewhere; filled as it is asked for.</summary>
    private double[] Besides(int state, Fed fed)
    {
        var key = fed.KeyOf(running);
        if (!besides.TryGetValue((state, key), out var table))
        {
            besides[(state, key)] = table = new double[AmountGrid.Count];
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

        var other = Math.Log(owner.Water.Unmodelled) + off.LogChanceUnmodelled + LogMath.LogSumExp([.. supplies.Select((_, s) => begins[s] + Besides(s, nowhere)[0])]);
        return 1 / (1 + Math.Exp(scale - other));
    }

    private readonly record struct Cell(int Supply, int First, int Second, int A, int B, double Log);
}

/// <summary>One state of the supply, none, one or two groups that run, and their amounts; groups that are not there have the number -1.</summary>
internal readonly record struct WeighedCell(int Supply, int First, int Second, int A, int B, double Share);
