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

    /// <summary>For each end and wire the same of all states together.</summary>
    private readonly double[] sums;

    public EndStates(NamingWay way, int ends, bool[] commons)
    {
        (this.way, this.commons, wide) = (way, commons, commons.Length + 1);
        (logs, sums) = (new double[ends * wide * Count], new double[ends * wide]);
        for (var wire = 0; ends > 0 && wire < wide; wire++)
        {
            var mine = Of(0, wire);
            for (var state = 0; state < Count; state++)
            {
                mine[state] = Math.Log(Share(wire, state));
            }

            sums[wire] = LogMath.LogSumExp(mine);
        }

        for (var end = 1; end < ends; end++)
        {
            Array.Copy(logs, 0, logs, end * wide * Count, wide * Count);
            Array.Copy(sums, 0, sums, end * wide, wide);
        }
    }

    private EndStates(EndStates other)
    {
        (way, commons, wide) = (other.way, other.commons, other.wide);
        (logs, sums) = ([.. other.logs], [.. other.sums]);
    }

    public EndStates Clone() => new(this);

    public double Log(int end, int wire) => sums[(end * wide) + wire];

    /// <summary>Adds them for all wires of an end.</summary>
    public void AddLogs(int end, double[] into)
    {
        var mine = sums.AsSpan(end * wide, wide);
        for (var wire = 0; wire < mine.Length; wire++)
        {
            into[wire] += mine[wire];
        }
    }

    public void Take(int end, bool[] put, bool answered)
    {
        Span<double> before = stackalloc double[Count];
        Span<double> last = stackalloc double[Count];
        for (var wire = 0; wire < wide; wire++)
        {
            var carries = Carries(put, wire);
            var mine = Of(end, wire);
            mine.CopyTo(before);
            if (wire > 0 && before.SequenceEqual(last) && carries == Carries(put, wire - 1) && IsCommon(wire) == IsCommon(wire - 1))
            {
                // What is alike for the wire before stays alike: most of a long bundle is.
                Of(end, wire - 1).CopyTo(mine);
                sums[(end * wide) + wire] = sums[(end * wide) + wire - 1];
                continue;
            }

            for (var state = 0; state < Count; state++)
            {
                var chance = Chance(wire, carries, state);
                mine[state] += Math.Log(answered ? chance : 1 - chance);
            }

            sums[(end * wide) + wire] = LogMath.LogSumExp(mine);
            before.CopyTo(last);
        }
    }

    /// <summary>Chance that an end answers, if it is this wire, by all that it answered before.</summary>
    public double ToAnswer(int end, int wire, bool carries) => carries ? ToAnswer(end, wire).On : ToAnswer(end, wire).Off;

    /// <summary>The same with something on the wire, and without.</summary>
    public (double On, double Off) ToAnswer(int end, int wire)
    {
        var mine = Of(end, wire);
        var (all, on, off) = (0.0, 0.0, 0.0);
        var most = Math.Max(mine[0], Math.Max(mine[1], mine[2]));
        for (var state = 0; state < Count; state++)
        {
            var share = Math.Exp(mine[state] - most);
            all += share;
            on += share * Chance(wire, true, state);
            off += share * Chance(wire, false, state);
        }

        return (on / all, off / all);
    }

    /// <summary>True where an end behaves alike for two wires, whatever was touched before.</summary>
    public bool AreAlike(int end, int wire, int other) => IsCommon(wire) == IsCommon(other) && Of(end, wire).SequenceEqual(Of(end, other));

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

    private static bool Carries(bool[] put, int wire) => wire < put.Length && put[wire];

    private bool IsCommon(int wire) => wire < commons.Length && commons[wire];

    private Span<double> Of(int end, int wire) => logs.AsSpan(((end * wide) + wire) * Count, Count);
}
