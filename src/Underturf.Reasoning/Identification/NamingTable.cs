using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>
/// All that speaks for each end being each wire. What was touched against an end taken for the common holds only where that end is one, and is kept apart. It knows nothing of
/// names, so that plans are tried on it as on the real one.
/// </summary>
internal sealed class NamingTable
{
    /// <summary>The supposition that no end that a lead was on is a common.</summary>
    public const int NoLead = -1;

    private readonly bool[] commons;
    private readonly EndEvidence always;
    private readonly SortedDictionary<int, EndEvidence> against;

    public NamingTable(int ends, bool[] commons) => (this.commons, always, against, Commons) = (commons, new EndEvidence(ends, commons), [], [.. commons.Index().Where(c => c.Item).Select(c => c.Index)]);

    private NamingTable(NamingTable other)
    {
        (commons, always, against, Commons) = (other.commons, other.always.Clone(), [], other.Commons);
        foreach (var (lead, evidence) in other.against)
        {
            against[lead] = evidence.Clone();
        }
    }

    public int Ends => always.Ends;

    public int Wires => commons.Length;

    /// <summary>What the belief distinguishes: each end that a lead was on is a common, or none of them is.</summary>
    public IEnumerable<int> Suppositions => against.Keys.Append(NoLead);

    /// <summary>Columns of the commons.</summary>
    public int[] Commons { get; }

    public bool IsCommon(int wire) => wire < Wires && commons[wire];

    public NamingTable Clone() => new(this);

    /// <summary>Adds what speaks for an end being a wire and has nothing to do with any other note.</summary>
    public void Add(int end, int wire, double log) => always.Add(end, wire, log);

    /// <summary>How the ends behave under a way that answers yes or no, the other lead on an end where it needs one; the wires where it is put on at the place.</summary>
    public EndStates States(NamingWay way, int lead, bool turned) => Of(lead).States(way, turned);

    /// <summary>Takes in one round of touches.</summary>
    public void Take(Touching touching) => Of(touching.Lead).Take(touching);

    /// <summary>As weights of a matching, each end by its best, and the logarithm of what they are all to be multiplied with.</summary>
    public (MatchingWeights Weights, double Log) Weights(int lead)
    {
        var (weights, scale) = (new MatchingWeights(Ends, Wires), against.Sum(a => a.Key == lead ? a.Value.LogRight : a.Value.LogOtherwise));
        var (mine, held) = (new double[Wires + 1], against.GetValueOrDefault(lead));
        var more = new double[Wires + 1];
        for (var e = 0; e < Ends; e++)
        {
            always.Logs(e, mine);
            if (held is not null)
            {
                held.Logs(e, more);
                for (var w = 0; w <= Wires; w++)
                {
                    mine[w] += more[w];
                }
            }

            if (against.ContainsKey(e))
            {
                Restrict(mine, e == lead);
            }

            scale += Fill(weights, e, mine);
        }

        return (weights, scale);
    }

    /// <summary>The end that the lead is supposed to be on rightly is a common; any other that a lead was on is none.</summary>
    private void Restrict(double[] mine, bool toCommons)
    {
        for (var w = 0; w <= Wires; w++)
        {
            mine[w] = IsCommon(w) == toCommons ? mine[w] : double.NegativeInfinity;
        }
    }

    /// <returns>The logarithm of the best, by which all are divided.</returns>
    private double Fill(MatchingWeights weights, int end, double[] mine)
    {
        var best = mine.Max();
        var row = weights.Row(end);
        for (var w = 0; w < row.Length; w++)
        {
            row[w] = w > 0 && mine[w] == mine[w - 1] ? row[w - 1] : Math.Exp(mine[w] - best);
        }

        weights.RowAlone(end) = Math.Exp(mine[Wires] - best);
        return best;
    }

    private EndEvidence Of(int lead)
    {
        if (lead == NoLead)
        {
            return always;
        }

        if (!against.TryGetValue(lead, out var evidence))
        {
            against[lead] = evidence = new EndEvidence(Ends, commons);
        }

        return evidence;
    }
}
