using Underturf.Numerics;

namespace Underturf.Reasoning.Water;

/// <summary>Sources that show in the same readings and run alike.</summary>
internal sealed record LeakGroup(Property.Practice.WaterFault Fault, Fed Fed, IReadOnlyList<LeakSource> Sources)
{
    /// <summary>Whether work has ended it, whichever of them it is.</summary>
    public bool IsCured => Sources.All(s => s.Cured);

    /// <summary>The same for the same, whatever does not hold.</summary>
    public string Key { get; } = $"{Fault.Id}:{Fed.Key}:{string.Join('|', Sources.Select(s => $"{s.Key}={s.Odds:R}"))}";
}

/// <summary>
/// Groups of sources that no reading tells apart, whatever valves do not hold: what shows the same with a valve that holds and with one that does not is one
/// group, weighed with the probabilities of both.
/// </summary>
internal sealed class LeakGroups
{
    private readonly Holdings holdings;
    private readonly List<LeakGroup> all = [];
    private readonly List<ulong> among = [];

    public LeakGroups(LeakSourceFinder finder, Holdings holdings)
    {
        this.holdings = holdings;
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (k, holding) in holdings.All.Index())
        {
            foreach (var group in finder.Find(holding.Passing).GroupBy(s => s.Signature).Select(g => new LeakGroup(g.First().Fault, g.First().Fed, [.. g])))
            {
                if (!numbers.TryGetValue(group.Key, out var number))
                {
                    numbers[group.Key] = number = all.Count;
                    all.Add(group);
                    among.Add(0);
                }

                among[number] |= 1UL << k;
            }
        }
    }

    public IReadOnlyList<LeakGroup> All => all;

    /// <summary>ln of the probability of all that lets one or two groups show as they do; of none it is 0.</summary>
    public double LogPrior(int first, int second = -1) => LogSum(Among(first, second), _ => true);

    /// <summary>Chance that a doubted valve does not hold, where these run and show as they do.</summary>
    public double Passes(int valve, int first, int second) =>
        Math.Exp(LogSum(Among(first, second), h => h.Passing.Contains(valve)) - LogPrior(first, second));

    private ulong Among(int first, int second) => (first < 0 ? ulong.MaxValue : among[first]) & (second < 0 ? ulong.MaxValue : among[second]);

    private double LogSum(ulong which, Func<Holding, bool> counts)
    {
        var sum = double.NegativeInfinity;
        foreach (var (k, holding) in holdings.All.Index())
        {
            sum = ((which >> k) & 1) == 1 && counts(holding) ? LogMath.LogAdd(sum, holding.LogPrior) : sum;
        }

        return sum;
    }
}
