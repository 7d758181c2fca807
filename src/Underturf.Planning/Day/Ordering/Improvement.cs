namespace Underturf.Planning.Day.Ordering;

/// <summary>Makes an order better as long as moving a run of jobs, putting one in or leaving some out at its end does.</summary>
internal static class Improvement
{
    private const double Rounding = 1e-9;

    private const int LongestRun = 3;

    public static IReadOnlyList<int> Of(ErrandDay day, IReadOnlyList<int> order)
    {
        var (best, value) = (order, day.Value(order) ?? double.NegativeInfinity);
        for (var better = true; better;)
        {
            better = false;
            foreach (var other in Around(day, best))
            {
                if (day.Value(other) is { } now && now > value + Rounding)
                {
                    (best, value, better) = (other, now, true);
                    break;
                }
            }
        }

        return best;
    }

    private static IEnumerable<IReadOnlyList<int>> Around(ErrandDay day, IReadOnlyList<int> order) =>
        Without(order).Concat(With(day, order)).Concat(Moved(order));

    /// <summary>One left out, or all from one on.</summary>
    private static IEnumerable<IReadOnlyList<int>> Without(IReadOnlyList<int> order)
    {
        for (var k = 0; k < order.Count; k++)
        {
            yield return [.. order.Take(k), .. order.Skip(k + 1)];
            yield return [.. order.Take(k)];
        }
    }

    private static IEnumerable<IReadOnlyList<int>> With(ErrandDay day, IReadOnlyList<int> order) =>
        from j in Enumerable.Range(0, day.Errands.Count).Except(order)
        from k in Enumerable.Range(0, order.Count + 1)
        select (IReadOnlyList<int>)[.. order.Take(k), j, .. order.Skip(k)];

    private static IEnumerable<IReadOnlyList<int>> Moved(IReadOnlyList<int> order)
    {
        for (var length = 1; length <= Math.Min(LongestRun, order.Count - 1); length++)
        {
            for (var from = 0; from + length <= order.Count; from++)
            {
                int[] run = [.. order.Skip(from).Take(length)];
                List<int> rest = [.. order.Take(from), .. order.Skip(from + length)];
                for (var to = 0; to <= rest.Count; to++)
                {
                    yield return [.. rest.Take(to), .. run, .. rest.Skip(to)];
                }
            }
        }
    }
}
