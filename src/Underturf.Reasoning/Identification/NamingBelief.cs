using Underturf.Numerics;

namespace Underturf.Reasoning.Identification;

/// <summary>How likely each end is each wire, by all notes together.</summary>
internal sealed class NamingBelief
{
    private const ulong Seed = 20260611;

    private readonly NamingTable table;
    private readonly IReadOnlyList<Supposed> supposed;

    public NamingBelief(NamingTable table)
    {
        this.table = table;
        supposed = Supposed.All(table, weights => MatchingMarginals.Of(weights, Seed));
        Shares = new MatchingMarginals(table.Ends, table.Wires, Supposed.Mixed(supposed)) { IsExact = supposed.All(s => s.Shares.IsExact) };
    }

    public NamingTable Table => table;

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
    public double ChanceWithout(int end, NamingTable without, Touching round)
    {
        var (all, kept) = (0.0, 0.0);
        foreach (var (lead, share, shares) in supposed)
        {
            var mine = shares.Of(end);
            for (var w = 0; w < mine.Length; w++)
            {
                var log = round.Lead == NamingTable.NoLead || round.Lead == lead ? without.Log(end, w, lead) - table.Log(end, w, lead) : -round.LogImagined(end);
                all += share * mine[w] * Math.Exp(log);
                kept += share * mine[w];
            }
        }

        return kept / all;
    }
}
