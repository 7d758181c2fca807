using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>What speaks for each end being each wire, as logarithms of chances: rows are ends, columns wires, and last none of them.</summary>
internal sealed class EndEvidence
{
    private readonly bool[] commons;
    private readonly double[] plain;
    private readonly Dictionary<string, EndStates> byWay;

    /// <summary>Of wires that were touched while ends carried: rows are wires, columns ends.</summary>
    private readonly Dictionary<string, EndStates> turned;

    private double checkedRight;

    public EndEvidence(int ends, bool[] commons)
    {
        (Ends, this.commons, byWay, turned) = (ends, commons, new(StringComparer.Ordinal), new(StringComparer.Ordinal));
        plain = new double[ends * (commons.Length + 1)];
    }

    private EndEvidence(EndEvidence other)
    {
        (Ends, commons, checkedRight, LogOtherwise) = (other.Ends, other.commons, other.checkedRight, other.LogOtherwise);
        plain = [.. other.plain];
        byWay = Copies(other.byWay);
        turned = Copies(other.turned);
    }

    public int Ends { get; }

    /// <summary>Logarithm of the chance of all of it where the other lead was on no common: every answer was imagined.</summary>
    public double LogOtherwise { get; private set; }

    /// <summary>
    /// Logarithm of the chance, where the lead was on a common, of what no end has a share in: what was read of all wires together, and what wires that end nowhere here answered.
    /// </summary>
    public double LogRight => checkedRight + turned.Values.Sum(states => Enumerable.Range(0, commons.Length).Sum(w => states.Log(w, Ends)));

    public EndEvidence Clone() => new(this);

    /// <summary>Adds what has nothing to do with any other note.</summary>
    public void Add(int end, int wire, double log) => plain[(end * (commons.Length + 1)) + wire] += log;

    /// <summary>All that speaks for an end being each wire and, last, none.</summary>
    public void Logs(int end, double[] into)
    {
        plain.AsSpan(end * into.Length, into.Length).CopyTo(into);
        foreach (var states in byWay.Values)
        {
            states.AddLogs(end, into);
        }

        foreach (var states in turned.Values)
        {
            for (var wire = 0; wire < commons.Length; wire++)
            {
                into[wire] += states.Log(wire, end) - states.Log(wire, Ends);
            }
        }
    }

    /// <summary>How ends, or wires where it is turned, behave under a way that answers yes or no. What is put on at the place comes back by no common.</summary>
    public EndStates States(NamingWay way, bool isTurned)
    {
        var all = isTurned ? turned : byWay;
        if (!all.TryGetValue(way.Name, out var states))
        {
            all[way.Name] = states = isTurned ? new EndStates(way, commons.Length, new bool[Ends]) : new EndStates(way, Ends, commons);
        }

        return states;
    }

    /// <summary>Takes in one round of touches.</summary>
    public void Take(Touching touching)
    {
        if (touching.Way.Shows == NamingSign.Answers)
        {
            var states = States(touching.Way, touching.Turned);
            foreach (var touched in touching.Touched)
            {
                states.Take(touched, touching.Put, touching.Answered.Contains(touched));
                LogOtherwise += touching.LogImagined(touched);
            }
        }

        if (touching.IsCheck)
        {
            checkedRight += touching.LogChecked(isRight: true);
            LogOtherwise += touching.LogChecked(isRight: false);
            return;
        }

        foreach (var (touched, carrier, log) in touching.Speaks())
        {
            Add(touching.Turned ? carrier : touched, touching.Turned ? touched : carrier, log);
        }
    }

    private static Dictionary<string, EndStates> Copies(Dictionary<string, EndStates> all) => all.ToDictionary(w => w.Key, w => w.Value.Clone(), StringComparer.Ordinal);
}
