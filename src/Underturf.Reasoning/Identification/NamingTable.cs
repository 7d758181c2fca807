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

    public NamingTable(int ends, bool[] commons) => (this.commons, always, against) = (commons, new EndEvidence(ends, commons), []);

    private NamingTable(NamingTable other)
    {
        (commons, always, against) = (other.commons, other.always.Clone(), []);
        foreach (var (lead, evidence) in other.against)
        {
            against[lead] = evidence.Clone();
        }
    }

    public int Ends => always.Ends;

    public int Wires => commons.Length;

    /// <summary>What the belief distinguishes: each end that a lead was on is a common, or none of them is.</summary>
    public IEnumerable<int> Suppositions => against.Keys.Append(NoLead);

    public bool IsCommon(int wire) => wire < Wires && commons[wire];

    public NamingTable Clone() => new(this);

    /// <summary>Adds what speaks for an end being a wire and has nothing to do with any other note.</summary>
    public void Add(int end, int wire, double log) => always.Add(end, wire, log);

    /// <param name="lead">The end that is supposed to be a common; what was touched against another says nothing then.</param>
    public double Log(int end, int wire, int lead) => always.Log(end, wire) + (against.TryGetValue(lead, out var more) ? more.Log(end, wire) : 0);

    /// <summary>How the ends behave under a way that answers yes or no, the other lead on an end where it needs one.</summary>
    public EndStates States(NamingWay way, int lead) => Of(lead).States(way);

    /// <summary>Takes in one round of touches.</summary>
    public void Take(Touching touching) => Of(touching.Lead).Take(touching);

    /// <summary>As weights of a matching, each end by its best, and the logarithm of what they are all to be multiplied with.</summary>
    public (MatchingWeights Weights, double Log) Weights(int lead)
    {
        var (weights, scale) = (new MatchingWeights(Ends, Wires), against.Sum(a => a.Key == lead ? a.Value.LogRight : a.Value.LogOtherwise));
        var mine = new double[Wires + 1];
        for (var e = 0; e < Ends; e++)
        {
            for (var w = 0; w <= Wires; w++)
            {
                mine[w] = May(e, w, lead) ? Log(e, w, lead) : double.NegativeInfinity;
            }

            var best = mine.Max();
            scale += best;
            for (var w = 0; w < Wires; w++)
            {
                weights[e, w] = Math.Exp(mine[w] - best);
            }

            weights.RowAlone(e) = Math.Exp(mine[Wires] - best);
        }

        return (weights, scale);
    }

    private bool May(int end, int wire, int lead) => end == lead ? IsCommon(wire) : !(IsCommon(wire) && against.ContainsKey(end));

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
