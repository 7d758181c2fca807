namespace Underturf.Planning.Day.Ordering;

/// <summary>
/// What the jobs that are left can save at most: each reached by its shortest way, begun at once, and as many as fit into the time, the last in part. Rules between jobs are left out,
/// so that no order does better.
/// </summary>
internal sealed class ErrandBound
{
    private readonly ErrandDay day;
    private readonly double[] least;
    private readonly double[] ratios;
    private readonly int[] ranked;

    public ErrandBound(ErrandDay day)
    {
        this.day = day;
        var count = day.Errands.Count;
        least = [.. Enumerable.Range(0, count).Select(j => Enumerable.Range(0, count).Where(i => i != j).Select(i => day.Between[i, j]).Append(day.First[j]).Min() + day.Errands[j].Minutes)];
        ratios = new double[count];
        ranked = [.. Enumerable.Range(0, count)];
    }

    /// <param name="done">What is done, or is not to be done.</param>
    public double Of(ulong done, double at)
    {
        for (var j = 0; j < least.Length; j++)
        {
            var gain = day.Saved(j, at + least[j]) - least[j];
            ratios[j] = (done >> j & 1) == 1 || gain <= 0 ? 0 : least[j] > 0 ? gain / least[j] : double.MaxValue;
        }

        Array.Sort(ranked, (a, b) => ratios[b].CompareTo(ratios[a]) is var by && by != 0 ? by : a.CompareTo(b));
        return Filled(day.Minutes - at);
    }

    private double Filled(double room)
    {
        var sum = 0.0;
        foreach (var j in ranked)
        {
            if (ratios[j] <= 0 || room <= 0)
            {
                break;
            }

            var share = least[j] <= room ? 1 : room / least[j];
            sum += share * (ratios[j] == double.MaxValue ? day.Errands[j].Worth : ratios[j] * least[j]);
            room -= least[j];
        }

        return sum;
    }
}
