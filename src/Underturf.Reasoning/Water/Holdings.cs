using Underturf.Numerics;

namespace Underturf.Reasoning.Water;

/// <summary>
/// Which of the isolation valves that were shut for a reading did not hold: one unknown for each valve, the same in all its readings and for all that runs
/// behind it. None, one or two of them at once.
/// </summary>
internal sealed class Holdings
{
    /// <summary>Beyond so many the rest count as holding.</summary>
    private const int MostDoubted = 8;

    public Holdings(WaterCase owner, IReadOnlyList<WaterReading> meter)
    {
        Doubted = [.. meter.SelectMany(r => r.Shut).Where(owner.View.IsolationValves.ContainsKey).Distinct().Order(StringComparer.Ordinal).Take(MostDoubted)];
        var odds = Math.Log(owner.Water.Isolating.NotHolding / (1 - owner.Water.Isolating.NotHolding));
        var all = new List<Holding> { new([], 0) };
        for (var one = 0; one < Doubted.Count; one++)
        {
            all.Add(new Holding([one], odds));
            all.AddRange(Enumerable.Range(0, one).Select(two => new Holding([two, one], 2 * odds)));
        }

        var scale = LogMath.LogSumExp([.. all.Select(h => h.LogPrior)]);
        All = [.. all.Select(h => h with { LogPrior = h.LogPrior - scale })];
    }

    /// <summary>Ids of the valves that were shut for some reading.</summary>
    public IReadOnlyList<string> Doubted { get; }

    /// <summary>Their probabilities beforehand sum to one.</summary>
    public IReadOnlyList<Holding> All { get; }
}

/// <summary>Valves that do not hold, by their numbers in order; all others do.</summary>
/// <param name="LogPrior">ln of its probability before anything was read.</param>
internal sealed record Holding(IReadOnlyList<int> Passing, double LogPrior);

/// <summary>What a shut valve that does not hold lets through, as a share of what would run: evenly from nothing to all, in places of the grid by which it is less.</summary>
internal static class PassingShares
{
    /// <summary>As far down as a hundredth; what is less passes as holding.</summary>
    private const int Lowest = 90;

    /// <summary>Every so many places, each with ln of its probability.</summary>
    public static IReadOnlyList<(int Less, double LogWeight)> Fine(int step) =>
    [
        .. Enumerable.Range(0, 1 + (Lowest / step)).Select(k => (Less: k * step, Weight: Math.Min(1, AmountGrid.Ratio(-(k - 0.5) * step)) - (k == Lowest / step ? 0 : AmountGrid.Ratio(-(k + 0.5) * step))))
            .Select(s => (s.Less, Math.Log(s.Weight))),
    ];

    /// <summary>The middles of so many parts alike.</summary>
    public static IReadOnlyList<(int Less, double LogWeight)> Coarse(int parts) =>
        [.. Enumerable.Range(0, parts).Select(k => (AmountGrid.Places(parts / (k + 0.5)), -Math.Log(parts)))];
}
