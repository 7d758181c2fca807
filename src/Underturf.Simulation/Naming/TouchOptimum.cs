using System.Numerics;

namespace Underturf.Simulation;

/// <summary>
/// The fewest touches that name all ends of a small bundle in the mean, without error: exact dynamic programming over which wires each end may still be. A touch asks of one end whether
/// it is one of some wires. All ways to match ends and wires are as likely beforehand.
/// </summary>
public sealed class TouchOptimum(int ends)
{
    private readonly Dictionary<ulong, (int Count, double Touches)> known = [];

    /// <summary>Expected touches of the best policy.</summary>
    public double Expected()
    {
        var all = new int[ends];
        Array.Fill(all, (1 << ends) - 1);
        return Solve(all).Touches;
    }

    /// <summary>Expected touches if the outcomes could be split as evenly as one liked: no policy needs fewer (Huffman).</summary>
    public static double Bound(int matchings)
    {
        var depth = BitOperations.Log2((uint)matchings);
        return depth + (2.0 * (matchings - (1 << depth)) / matchings);
    }

    private (int Count, double Touches) Solve(int[] may)
    {
        var state = Reduced(may);
        var key = Key(state);
        if (known.TryGetValue(key, out var found))
        {
            return found;
        }

        var count = Matchings(state, 0, 0);
        var best = count < 2 ? 0 : double.MaxValue;
        foreach (var (yes, no, bound) in Touches(state, count).OrderBy(t => t.Bound))
        {
            if (bound >= best - 1e-12)
            {
                break;
            }

            var (a, b) = (Solve(yes), Solve(no));
            best = Math.Min(best, 1 + (((a.Count * a.Touches) + (b.Count * b.Touches)) / count));
        }

        return known[key] = (count, best);
    }

    private IEnumerable<(int[] Yes, int[] No, double Bound)> Touches(int[] state, int count)
    {
        for (var end = 0; end < ends; end++)
        {
            // Of a set and its complement one is enough.
            for (var set = (state[end] - 1) & state[end]; set > 0; set = (set - 1) & state[end])
            {
                if ((set & -state[end] & state[end]) == 0 && BitOperations.PopCount((uint)state[end]) > 1)
                {
                    continue;
                }

                int[] yes = [.. state], no = [.. state];
                (yes[end], no[end]) = (set, state[end] & ~set);
                var (a, b) = (Matchings(yes, 0, 0), Matchings(no, 0, 0));
                if (a > 0 && b > 0)
                {
                    yield return (yes, no, 1 + (((a * Bound(a)) + (b * Bound(b))) / count));
                }
            }
        }
    }

    /// <summary>Without what no matching can hold, ends and wires in an order of their own.</summary>
    private int[] Reduced(int[] may)
    {
        int[] state = [.. may];
        for (var end = 0; end < ends; end++)
        {
            for (var wire = 0; wire < ends; wire++)
            {
                int[] with = [.. state];
                with[end] = 1 << wire;
                if ((state[end] >> wire & 1) == 1 && Matchings(with, 0, 0) == 0)
                {
                    state[end] &= ~(1 << wire);
                }
            }
        }

        // Wires by how many ends may be them and which; then ends by what is left.
        var order = Enumerable.Range(0, ends).OrderBy(w => state.Count(s => (s >> w & 1) == 1))
            .ThenBy(w => state.Where(s => (s >> w & 1) == 1).Sum(s => 1 << (4 * BitOperations.PopCount((uint)s)))).ToArray();
        return [.. state.Select(s => Enumerable.Range(0, ends).Sum(k => (s >> order[k] & 1) << k)).Order()];
    }

    private ulong Key(int[] state) => state.Aggregate(0UL, (key, s) => (key << ends) | (uint)s);

    private int Matchings(int[] state, int end, int taken)
    {
        if (end == ends)
        {
            return 1;
        }

        var count = 0;
        for (var free = state[end] & ~taken; free != 0; free &= free - 1)
        {
            count += Matchings(state, end + 1, taken | (free & -free));
        }

        return count;
    }
}
