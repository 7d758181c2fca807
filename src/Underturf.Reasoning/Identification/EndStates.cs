using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>
/// How each end behaves under one way: as it should, deaf (damp, corroded), or answering for its neighbours. That stays the same from touch to touch, so that the same touch made
/// twice says little more than once.
/// </summary>
internal sealed class EndStates
{
    private const int Count = 3;
    private const int Deaf = 1;
    private const int Chatty = 2;

    private readonly NamingWay way;
    private readonly bool[] commons;
    private readonly int wide;

    /// <summary>For each end, wire and state the logarithm of its share and of the chance of all answers so far.</summary>
    private readonly double[] logs;

    public EndStates(NamingWay way, int ends, bool[] commons)
    {
        (this.way, this.commons, wide) = (way, commons, commons.Length + 1);
        logs = new double[ends * wide * Count];
        for (var k = 0; k < logs.Length; k++)
        {
            logs[k] = Math.Log(Share(k / Count % wide, k % Count));
        }
    }

    private EndStates(EndStates other)
    {
        (way, commons, wide) = (other.way, other.commons, other.wide);
        logs = [.. other.logs];
    }

    public EndStates Clone() => new(this);

    public double Log(int end, int wire) => LogMath.LogSumExp(Of(end, wire));

    public void Take(int end, bool[] put, bool answered)
    {
        for (var wire = 0; wire < wide; wire++)
        {
            var mine = Of(end, wire);
            for (var state = 0; state < Count; state++)
            {
                var chance = Chance(wire, wire < put.Length && put[wire], state);
                mine[state] += Math.Log(answered ? chance : 1 - chance);
            }
        }
    }

    /// <summary>Chance that an end answers, if it is this wire, by all that it answered before.</summary>
    public double ToAnswer(int end, int wire, bool carries)
    {
        var mine = Of(end, wire);
        var (all, yes) = (0.0, 0.0);
        var most = Math.Max(mine[0], Math.Max(mine[1], mine[2]));
        for (var state = 0; state < Count; state++)
        {
            var share = Math.Exp(mine[state] - most);
            all += share;
            yes += share * Chance(wire, carries, state);
        }

        return yes / all;
    }

    /// <summary>Chance that an end in a state answers, if it is this wire.</summary>
    public double Chance(int wire, bool carries, int state) =>
        carries ? 1 - (state == Deaf ? way.DeafMissed : way.Missed)
        : state != Chatty ? way.Imagined
        : IsCommon(wire) ? 1 - way.Missed : way.ChattyImagined;

    /// <summary>A state drawn for an end that is this wire.</summary>
    public int Draw(int wire, SeededGenerator random) => random.Choose([Share(wire, 0), Share(wire, Deaf), Share(wire, Chatty)]);

    /// <summary>A common answers always or as seldom as any other: which, nobody knows beforehand.</summary>
    private double Share(int wire, int state)
    {
        var chatty = IsCommon(wire) ? way.CommonAnswers : way.Chatty;
        return state == Chatty ? chatty : (1 - chatty) * (state == Deaf ? way.Deaf : 1 - way.Deaf);
    }

    private bool IsCommon(int wire) => wire < commons.Length && commons[wire];

    private Span<double> Of(int end, int wire) => logs.AsSpan(((end * wide) + wire) * Count, Count);
}
