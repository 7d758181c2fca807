using System.Numerics;
using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>
/// One end, and the wires that carry it while it is touched: the pair that tells most, by the shares of all ends together. Where several tell as much, the end that has fewest wires left,
/// so that ends are finished one after the other.
/// </summary>
internal static class SingleTouch
{
    /// <summary>Every set of wires is tried for an end that may be so many at the most.</summary>
    private const int MostWhole = 12;

    /// <summary>Information closer than this is the same.</summary>
    private const double Alike = 1e-9;

    /// <summary>With more ends open than can be summed whole, an end that was begun is finished for so few bits less: then all others stay alike, and shares stay exact.</summary>
    private const double Begun = 0.1;

    /// <returns>The end and whether each wire carries it; nothing where no touch can tell anything.</returns>
    public static (int End, bool[] Put, double Bits)? Choose(Standing standing, NamingWay way)
    {
        (int End, bool[] Put, double Bits, int Left)? best = null;
        var (odds, wires) = (standing.Odds(), standing.ToCarry(way).ToList());
        var ends = standing.ToTouch(way).Select(e => (End: e, Open: wires.Where(w => odds[e, w] > Alike).OrderByDescending(w => odds[e, w]).ToList())).Where(e => e.Open.Count > 0).ToList();
        var alike = ends.Count(e => e.Open.Count > 1) > MostWhole ? Begun : Alike;
        foreach (var (end, open) in ends)
        {
            var chosen = Half(open.Select(w => odds[end, w]).ToArray(), way.Most);
            var bits = Told(standing, odds, way, end, [.. chosen.Select(k => open[k])]);
            if (bits > Alike && (best is not { } b || bits > b.Bits + alike || (bits > b.Bits - alike && open.Count < b.Left)))
            {
                var put = new bool[standing.Carriers];
                chosen.ForEach(k => put[open[k]] = true);
                best = (end, put, bits, open.Count);
            }
        }

        return best is { } found ? (found.End, found.Put, found.Bits) : null;
    }

    /// <summary>Where a touch never errs.</summary>
    public static (int End, bool[] Put, double Bits)? Best(MatchingMarginals shares)
    {
        var way = new NamingWay(string.Empty, string.Empty, string.Empty, NamingSign.Answers, true, string.Empty, Most: int.MaxValue);
        return Choose(new Standing(new NamingTable(shares.Rows, new bool[shares.Columns]), shares.ToArray(), -1, new bool[shares.Rows], new double[shares.Rows], new bool[shares.Columns], false, new Crew(0, 2, true)), way);
    }

    private static double Told(Standing standing, Odds odds, NamingWay way, int end, HashSet<int> put)
    {
        var (states, yes, noise) = (standing.States(way), 0.0, 0.0);
        for (var w = 0; w <= standing.Carriers; w++)
        {
            var (share, chance) = (odds[end, w], states.ToAnswer(end, w, put.Contains(w)));
            yes += share * chance;
            noise += share * Halves.Bits(chance);
        }

        return Halves.Bits(yes) - noise;
    }

    /// <summary>The set whose shares come nearest to one half.</summary>
    private static List<int> Half(double[] shares, int most) => shares.Length <= MostWhole ? Whole(shares, most) : Greedy(shares, most);

    private static List<int> Whole(double[] shares, int most)
    {
        var (best, miss) = (1, double.MaxValue);
        var sums = new double[1 << shares.Length];
        for (var set = 1; set < sums.Length; set++)
        {
            var low = BitOperations.TrailingZeroCount(set);
            sums[set] = sums[set & (set - 1)] + shares[low];
            if (BitOperations.PopCount((uint)set) <= most && Math.Abs(sums[set] - 0.5) < miss - Alike)
            {
                (best, miss) = (set, Math.Abs(sums[set] - 0.5));
            }
        }

        return [.. Enumerable.Range(0, shares.Length).Where(k => (best >> k & 1) == 1)];
    }

    /// <summary>The largest first, each if it brings the sum nearer.</summary>
    private static List<int> Greedy(double[] shares, int most)
    {
        var (chosen, sum) = (new List<int>(), 0.0);
        for (var k = 0; k < shares.Length && chosen.Count < most; k++)
        {
            if (chosen.Count == 0 || Math.Abs(sum + shares[k] - 0.5) < Math.Abs(sum - 0.5) - Alike)
            {
                chosen.Add(k);
                sum += shares[k];
            }
        }

        return chosen;
    }
}
