using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>What speaks for each end being each wire, as logarithms of chances: rows are ends, columns wires, and last none of them.</summary>
internal sealed class EndEvidence
{
    private readonly bool[] commons;
    private readonly double[] plain;
    private readonly Dictionary<string, EndStates> byWay;

    public EndEvidence(int ends, bool[] commons)
    {
        (Ends, this.commons, byWay) = (ends, commons, new(StringComparer.Ordinal));
        plain = new double[ends * (commons.Length + 1)];
    }

    private EndEvidence(EndEvidence other)
    {
        (Ends, commons, LogRight, LogOtherwise) = (other.Ends, other.commons, other.LogRight, other.LogOtherwise);
        plain = [.. other.plain];
        byWay = other.byWay.ToDictionary(w => w.Key, w => w.Value.Clone(), StringComparer.Ordinal);
    }

    public int Ends { get; }

    /// <summary>Logarithm of the chance of all of it where the other lead was on no common: every answer was imagined.</summary>
    public double LogOtherwise { get; private set; }

    /// <summary>Logarithm of the chance of what was read of all wires together, where the lead was on a common.</summary>
    public double LogRight { get; private set; }

    public EndEvidence Clone() => new(this);

    /// <summary>Adds what has nothing to do with any other note.</summary>
    public void Add(int end, int wire, double log) => plain[(end * (commons.Length + 1)) + wire] += log;

    public double Log(int end, int wire)
    {
        var log = plain[(end * (commons.Length + 1)) + wire];
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
                LogOtherwise += touching.LogImagined(end);
            }
        }

        if (touching.IsCheck)
        {
            LogRight += touching.LogChecked(isRight: true);
            LogOtherwise += touching.LogChecked(isRight: false);
            return;
        }

        foreach (var (end, wire, log) in touching.Speaks())
        {
            Add(end, wire, log);
        }
    }
}
