using Underturf.Numerics;

namespace Underturf.Reasoning.Identification;

/// <summary>How likely each end is each wire, by all notes together.</summary>
internal sealed class NamingBelief
{
    private const ulong Seed = 20260611;

    public NamingBelief(NamingTable table)
    {
        Table = table;
        Shares = MatchingMarginals.Of(table.Weights(), Seed);
    }

    public NamingTable Table { get; }

    public MatchingMarginals Shares { get; }

    /// <summary>The likeliest wire of an end; the number of wires where it is none.</summary>
    public (int Wire, double Share) Best(int end)
    {
        var best = (Wire: 0, Share: -1.0);
        var mine = Shares.Of(end);
        for (var w = 0; w < mine.Length; w++)
        {
            best = mine[w] > best.Share ? (w, mine[w]) : best;
        }

        return best;
    }

    /// <summary>Chance of what an end answered in a round, by everything else (exact).</summary>
    /// <param name="without">The table without that round.</param>
    public double ChanceWithout(int end, NamingTable without)
    {
        var (all, kept) = (0.0, 0.0);
        var mine = Shares.Of(end);
        for (var w = 0; w < mine.Length; w++)
        {
            all += mine[w] * Math.Exp(without.Log(end, w) - Table.Log(end, w));
            kept += mine[w];
        }

        return kept / all;
    }
}
