namespace Underturf.Numerics;

/// <summary>
/// How to share out the minutes of a search over cells so that as much as possible is found, whenever one stops. A cell searched for z minutes misses what is there
/// with chance exp(-a z), a its rate.
/// </summary>
/// <remarks>
/// The best allocation of T minutes gives a cell of chance p the minutes z = max(0, ln(p a / r) / a), with the one r that makes them add up to T (B. O. Koopman, The theory
/// of search III, Operations Research 5, 1957). It grows with T in every cell, so one order of searching is best for every T at once (L. D. Stone, Theory of Optimal Search,
/// 1975, uniformly optimal plan). r is found by sorting p a once: O(n log n), then O(log n) a question. A cell in which a minute costs more than a minute gets its rate
/// divided by that price.
/// </remarks>
public sealed class SearchPlan
{
    private readonly int[] order;
    private readonly double[] joins;
    private readonly double[] spans;

    private SearchPlan(int cells, int[] order, double[] joins, double[] spans)
    {
        (Cells, this.order, this.joins, this.spans) = (cells, order, joins, spans);
        Curve = new SearchCurve(joins, spans);
    }

    public int Cells { get; }

    /// <summary>What is found in how many minutes.</summary>
    public SearchCurve Curve { get; }

    /// <summary>Cells worth a search, the first to be searched first.</summary>
    public ReadOnlySpan<int> Order => order;

    /// <param name="weights">Chance that it is in each cell; they need not add up to one.</param>
    /// <param name="ratesPerMinute">Rate of finding in each cell if it is there; none for a cell that cannot be searched.</param>
    public static SearchPlan Of(ReadOnlySpan<double> weights, ReadOnlySpan<double> ratesPerMinute) => Of(weights, ratesPerMinute, []);

    /// <param name="spentMinutes">Minutes that each cell was searched for already, in vain; the weights are those from before.</param>
    public static SearchPlan Of(ReadOnlySpan<double> weights, ReadOnlySpan<double> ratesPerMinute, ReadOnlySpan<double> spentMinutes)
    {
        if (weights.Length != ratesPerMinute.Length || (spentMinutes.Length != 0 && spentMinutes.Length != weights.Length))
        {
            throw new ArgumentException("Each cell needs a weight and a rate, and minutes for all cells or for none.", nameof(ratesPerMinute));
        }

        var (order, falling, count) = (new int[weights.Length], new double[weights.Length], 0);
        for (var i = 0; i < weights.Length; i++)
        {
            var rate = Checked(weights[i], nameof(weights)) * Checked(ratesPerMinute[i], nameof(ratesPerMinute));
            rate *= spentMinutes.Length == 0 ? 1 : Math.Exp(-ratesPerMinute[i] * Checked(spentMinutes[i], nameof(spentMinutes)));
            if (rate > 0)
            {
                (order[count], falling[count]) = (i, -rate);
                count++;
            }
        }

        Array.Sort(falling, order, 0, count);
        var (joins, spans) = (new double[count], new double[count]);
        for (var k = 0; k < count; k++)
        {
            (joins[k], spans[k]) = (-falling[k], 1 / ratesPerMinute[order[k]]);
        }

        return new SearchPlan(weights.Length, order[..count], joins, spans);
    }

    /// <summary>Minutes in each cell when so many are spent in all.</summary>
    public double[] Allocate(double minutes)
    {
        var shares = new double[Cells];
        if (minutes > 0 && joins.Length > 0)
        {
            var (rate, fallen) = Curve.At(minutes);
            for (var k = 0; k < joins.Length && joins[k] >= rate; k++)
            {
                shares[order[k]] = (Math.Log(joins[k] / rate) + fallen) * spans[k];
            }
        }

        return shares;
    }

    /// <summary>The next minutes in each cell after so many were spent in all: never below none, for the allocations are nested.</summary>
    public double[] Next(double spentMinutes, double minutes)
    {
        var (before, after) = (Allocate(spentMinutes), Allocate(spentMinutes + minutes));
        for (var i = 0; i < after.Length; i++)
        {
            after[i] = Math.Max(0, after[i] - before[i]);
        }

        return after;
    }

    private static double Checked(double number, string name) => number >= 0 && double.IsFinite(number)
        ? number
        : throw new ArgumentException("Weights, rates and minutes are finite and not negative.", name);
}
