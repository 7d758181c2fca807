using Underturf.Property.Practice;

namespace Underturf.Reasoning.Water;

/// <summary>What is running where nothing should: one or two groups of sources that the readings do not tell apart, or none.</summary>
/// <param name="Groups">None for nothing.</param>
/// <param name="Probability">Of this, all amounts together.</param>
/// <param name="Amounts">For each group, its amount as mean and standard deviation, m3/s.</param>
/// <param name="Shares">For each group, the share of each of its sources.</param>
internal sealed record LeakSet(
    IReadOnlyList<LeakGroup> Groups,
    double Probability,
    IReadOnlyList<(double Mean, double Spread)> Amounts,
    IReadOnlyList<IReadOnlyList<double>> Shares);

/// <summary>Makes sets of the cells of the sum.</summary>
internal static class LeakSets
{
    /// <summary>Most probable first; with what is not modelled they sum to one.</summary>
    public static IReadOnlyList<LeakSet> Of(WaterSum sum) =>
        [.. sum.Cells.GroupBy(c => (c.First, c.Second)).Select(g => Join(sum, [.. g])).OrderByDescending(s => s.Probability)];

    /// <summary>Probabilities of what runs now while nothing should, over the amounts of the grid.</summary>
    public static double[] Running(WaterSum sum)
    {
        var shares = new double[AmountGrid.Count];
        foreach (var cell in sum.Cells)
        {
            shares[AmountGrid.Nearest(Lasting(sum, cell.First, cell.A) + Lasting(sum, cell.Second, cell.B))] += cell.Share;
        }

        return shares;
    }

    private static double Lasting(WaterSum sum, int group, int amount) =>
        group < 0 || sum.Groups[group].IsCured || sum.Groups[group].Fault.Scope == WaterScope.Meter ? 0 : AmountGrid.At(amount);

    private static LeakSet Join(WaterSum sum, List<WeighedCell> cells)
    {
        int[] groups = [.. new[] { cells[0].First, cells[0].Second }.Where(g => g >= 0)];
        var total = cells.Sum(c => c.Share);
        return new LeakSet(
            [.. groups.Select(g => sum.Groups[g])],
            total * (1 - sum.Unmodelled),
            [.. groups.Select((_, k) => Moments(cells, total, k))],
            [.. groups.Select((g, k) => SharesOf(sum, g, cells, total, k))]);
    }

    private static (double Mean, double Spread) Moments(List<WeighedCell> cells, double total, int k)
    {
        var mean = cells.Sum(c => c.Share * AmountGrid.At(Amount(c, k))) / total;
        return (mean, Math.Sqrt(cells.Sum(c => c.Share * Math.Pow(AmountGrid.At(Amount(c, k)) - mean, 2)) / total));
    }

    private static double[] SharesOf(WaterSum sum, int group, List<WeighedCell> cells, double total, int k)
    {
        var shares = new double[sum.Groups[group].Sources.Count];
        foreach (var at in cells.GroupBy(c => (c.Supply, Amount: Amount(c, k))))
        {
            double[] odds = [.. sum.SourceOdds(at.Key.Supply, group, at.Key.Amount)];
            var (weight, all) = (at.Sum(c => c.Share) / total, odds.Sum());
            for (var s = 0; s < shares.Length; s++)
            {
                shares[s] += weight * odds[s] / all;
            }
        }

        return shares;
    }

    private static int Amount(WeighedCell cell, int k) => k == 0 ? cell.A : cell.B;
}
