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

    /// <summary>Chance of what was answered in a round, by everything else (exact).</summary>
    /// <param name="touched">The end; the wire where it is turned.</param>
    /// <param name="without">The table without that round.</param>
    public double ChanceWithout(int touched, NamingTable without, Touching round)
    {
        var (all, kept) = (0.0, 0.0);
        foreach (var (lead, share, shares) in supposed)
        {
            var odds = Odds.Of(shares.ToArray(), table.Ends, table.Wires, round.Turned);
            var (before, now) = (without.States(round.Way, round.Lead, round.Turned), table.States(round.Way, round.Lead, round.Turned));
            for (var c = 0; c <= round.Put.Length; c++)
            {
                var log = round.Lead == NamingTable.NoLead || round.Lead == lead ? before.Log(touched, c) - now.Log(touched, c) : -round.LogImagined(touched);
                all += share * odds[touched, c] * Math.Exp(log);
                kept += share * odds[touched, c];
            }
        }

        return kept / all;
    }

    /// <summary>By everything but a round that speaks for one conductor (exact): how likely that is each that was touched, and what the round made of all matchings together.</summary>
    public (IReadOnlyDictionary<int, double> Is, double Made) Without(Touching round)
    {
        var (carrier, all, rest) = (Array.IndexOf(round.Put, true), new Dictionary<int, double>(), 1.0);
        double Share(Supposed s, int touched) => s.Share * (round.Turned ? s.Shares[carrier, touched] : s.Shares[touched, carrier]);
        foreach (var (touched, _, log) in round.Speaks())
        {
            var here = supposed.Sum(s => Share(s, touched));
            var under = round.Lead == NamingTable.NoLead ? here : supposed.Where(s => s.Lead == round.Lead).Sum(s => Share(s, touched));
            rest -= here;
            all[touched] = (under / Math.Exp(log)) + here - under;
        }

        var sum = Math.Max(0, rest) + all.Values.Sum();
        return (all.ToDictionary(a => a.Key, a => a.Value / sum), 1 / sum);
    }

    /// <summary>Chance that the lead of a check was on a common, by everything else.</summary>
    public double LeadWithout(Touching check)
    {
        var right = supposed.Where(s => s.Lead == check.Lead).Sum(s => s.Share) / Math.Exp(check.LogChecked(isRight: true));
        var wrong = supposed.Where(s => s.Lead != check.Lead).Sum(s => s.Share) / Math.Exp(check.LogChecked(isRight: false));
        return right / (right + wrong);
    }
}
