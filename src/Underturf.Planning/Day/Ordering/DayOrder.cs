namespace Underturf.Planning.Day.Ordering;

/// <summary>
/// The best order: depth first from the order that a greedy choice and its improvement give, cut where what is left cannot save enough, or where the same jobs were done sooner and saved
/// no less. Exact within its number of nodes; beyond that it tells the bound that holds all the same.
/// </summary>
public sealed class DayOrder(int mostNodes = 20_000)
{
    /// <summary>Jobs are counted in the bits of one word.</summary>
    public const int MostErrands = 60;

    /// <exception cref="ArgumentException">There are more errands than <see cref="MostErrands"/>.</exception>
    public ErrandOrder Solve(ErrandDay day)
    {
        if (day.Errands.Count > MostErrands)
        {
            throw new ArgumentException($"More than {MostErrands} errands.", nameof(day));
        }

        var first = Improvement.Of(day, Greedy(day));
        return new Search(day, first, mostNodes).Run();
    }

    /// <summary>Always what saves most for its minutes next.</summary>
    private static List<int> Greedy(ErrandDay day)
    {
        var (order, done, at) = (new List<int>(), 0UL, 0.0);
        while (Next(day, done, order.Count > 0 ? order[^1] : -1, at) is var (next, end))
        {
            order.Add(next);
            (done, at) = (done | (1UL << next), end);
        }

        return order;
    }

    private static (int Next, double End)? Next(ErrandDay day, ulong done, int last, double at) => Ranked(day, done, last, at).Select(c => ((int, double)?)(c.Errand, c.End)).FirstOrDefault();

    /// <summary>What can be done next, the best for its minutes first. A job that is worth nothing by itself may open the way to others.</summary>
    private static IEnumerable<(int Errand, double End)> Ranked(ErrandDay day, ulong done, int last, double at) => Enumerable.Range(0, day.Errands.Count)
        .Where(j => day.IsOpen(j, done))
        .Select(j => (Errand: j, End: day.DoneAt(j, last, at)))
        .Where(c => c.End is not null)
        .Select(c => (c.Errand, End: c.End!.Value))
        .OrderByDescending(c => day.Saved(c.Errand, c.End) / Math.Max(c.End - at, 1e-9))
        .ThenBy(c => c.Errand);

    private sealed class Search(ErrandDay day, IReadOnlyList<int> first, int mostNodes)
    {
        private const double Rounding = 1e-9;

        private readonly ErrandBound bound = new(day);
        private readonly Dictionary<(ulong Done, int Last), List<(double At, double Saved)>> seen = [];
        private readonly List<int> path = [];
        private IReadOnlyList<int> best = first;
        private double value = day.Value(first) ?? 0;
        private double left = double.NegativeInfinity;
        private int nodes;

        public ErrandOrder Run()
        {
            Visit(0, -1, 0, 0);
            return new ErrandOrder(best, value, Math.Max(value, left));
        }

        private void Visit(ulong done, int last, double at, double saved)
        {
            var here = saved - at - (last < 0 ? 0 : day.End[last]);
            if (here > value + Rounding)
            {
                (best, value) = ([.. path], here);
            }

            var most = saved - at + bound.Of(done, at);
            if (most <= value + Rounding)
            {
                return;
            }

            if (++nodes > mostNodes)
            {
                left = Math.Max(left, most);
                return;
            }

            if (IsWorse(done, last, at, saved))
            {
                return;
            }

            foreach (var (errand, end) in Ranked(day, done, last, at).ToList())
            {
                path.Add(errand);
                Visit(done | (1UL << errand), errand, end, saved + day.Saved(errand, end));
                path.RemoveAt(path.Count - 1);
            }
        }

        /// <summary>Whether the same jobs were done sooner, the same one last, and saved no less: one can always wait.</summary>
        private bool IsWorse(ulong done, int last, double at, double saved)
        {
            if (!seen.TryGetValue((done, last), out var before))
            {
                seen[(done, last)] = before = [];
            }

            if (before.Exists(b => b.At <= at && b.Saved >= saved))
            {
                return true;
            }

            before.RemoveAll(b => b.At >= at && b.Saved <= saved);
            before.Add((at, saved));
            return false;
        }
    }
}
