using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>
/// What speaks for each end being each wire, as logarithms of chances: rows are ends, columns wires, and last none of them. It knows nothing of names, so that
/// plans are tried on it as on the real one.
/// </summary>
internal sealed class NamingTable
{
    private readonly bool[] commons;
    private readonly double[] plain;
    private readonly Dictionary<string, EndStates> byWay;

    public NamingTable(int ends, bool[] commons)
    {
        (Ends, Wires, this.commons, byWay) = (ends, commons.Length, commons, new(StringComparer.Ordinal));
        plain = new double[ends * (Wires + 1)];
    }

    private NamingTable(NamingTable other)
    {
        (Ends, Wires, commons) = (other.Ends, other.Wires, other.commons);
        plain = [.. other.plain];
        byWay = other.byWay.ToDictionary(w => w.Key, w => w.Value.Clone(), StringComparer.Ordinal);
    }

    public int Ends { get; }

    public int Wires { get; }

    public bool IsCommon(int wire) => wire < Wires && commons[wire];

    public NamingTable Clone() => new(this);

    /// <summary>Adds what speaks for an end being a wire and has nothing to do with any other note.</summary>
    public void Add(int end, int wire, double log) => plain[(end * (Wires + 1)) + wire] += log;

    public double Log(int end, int wire)
    {
        var log = plain[(end * (Wires + 1)) + wire];
        foreach (var states in byWay.Values)
        {
            log += states.Log(end, wire);
        }

        return log;
    }

    /// <summary>How the ends behave under a way that answers yes or no.</summary>
    public EndStates States(NamingWay way)
    {
        if (!byWay.TryGetValue(way.Name, out var states))
        {
            states = new EndStates(way, Ends, commons);
            byWay[way.Name] = states;
        }

        return states;
    }

    /// <summary>Takes in one round of touches.</summary>
    public void Take(Touching touching)
    {
        if (touching.Way.Shows == NamingSign.Answers)
        {
            foreach (var end in touching.Touched)
            {
                States(touching.Way).Take(end, touching.Put, touching.Answered.Contains(end));
            }
        }

        foreach (var (end, wire, log) in touching.Speaks(this))
        {
            Add(end, wire, log);
        }
    }

    /// <summary>As weights of a matching, each end by its best.</summary>
    public MatchingWeights Weights()
    {
        var weights = new MatchingWeights(Ends, Wires);
        var mine = new double[Wires + 1];
        for (var e = 0; e < Ends; e++)
        {
            for (var w = 0; w <= Wires; w++)
            {
                mine[w] = Log(e, w);
            }

            var best = mine.Max();
            for (var w = 0; w < Wires; w++)
            {
                weights[e, w] = Math.Exp(mine[w] - best);
            }

            weights.RowAlone(e) = Math.Exp(mine[Wires] - best);
        }

        return weights;
    }
}
