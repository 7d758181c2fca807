using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>One round: something on some wires, some ends touched, and what came of it.</summary>
/// <param name="Put">Whether each wire carried it.</param>
/// <param name="Touched">The ends that were touched.</param>
/// <param name="Answered">Those of them that answered.</param>
internal sealed record Touching(NamingWay Way, bool[] Put, IReadOnlyList<int> Touched, IReadOnlySet<int> Answered)
{
    /// <summary>For known resistors: what the meter showed and what is fitted to each end touched.</summary>
    public ResistorReading? Ohms { get; init; }

    /// <summary>The end that the other lead was on, taken for the common; -1 where there is none.</summary>
    public int Against { get; init; } = -1;

    /// <summary>What the round says beside each end's yes or no: logarithms of chances, but for what is the same for all.</summary>
    public IEnumerable<(int End, int Wire, double Log)> Speaks(NamingTable table) => Ends().Concat(Common(table));

    private IEnumerable<(int End, int Wire, double Log)> Ends() => Way.Shows switch
    {
        NamingSign.Loudest => Loudest(Array.IndexOf(Put, true)),
        NamingSign.Ohms when Ohms is { } ohms => Resistors(Array.IndexOf(Put, true), ohms),
        _ => [],
    };

    /// <summary>Where something answers, the other lead was on a common; on anything else the answer was imagined.</summary>
    private IEnumerable<(int End, int Wire, double Log)> Common(NamingTable table)
    {
        var answers = Way.Shows == NamingSign.Ohms ? Ohms is { Shown: not null } : Answered.Count > 0;
        return Against < 0 || !answers
            ? []
            : Enumerable.Range(0, table.Wires + 1).Where(w => !table.IsCommon(w)).Select(w => (Against, w, Math.Log(Math.Min(1, Way.Imagined * Touched.Count))));
    }

    /// <summary>It is one of the ends touched, or none of them: then any is as likely to be the loudest.</summary>
    private IEnumerable<(int End, int Wire, double Log)> Loudest(int wire)
    {
        if (wire < 0 || (Touched.Count < 2 && Answered.Count > 0))
        {
            yield break;
        }

        foreach (var end in Touched)
        {
            yield return (end, wire, Math.Log(
                Answered.Count == 0 ? Way.Missed / (1 - Way.Imagined)
                : Answered.Contains(end) ? (1 - Way.Missed) * Touched.Count / Answered.Count
                : Way.Missed * Touched.Count / Math.Max(1, Touched.Count - Answered.Count)));
        }
    }

    private IEnumerable<(int End, int Wire, double Log)> Resistors(int wire, ResistorReading reading)
    {
        if (wire < 0)
        {
            yield break;
        }

        for (var k = 0; k < Touched.Count; k++)
        {
            yield return (Touched[k], wire, reading.LogRatio(k, Way));
        }
    }
}

/// <summary>Ohms at the far side of a wire, and the resistors at the ends that it may lead to.</summary>
/// <param name="Shown">What the meter showed; nothing where it was over range.</param>
/// <param name="Expected">What it would show for each end touched.</param>
/// <param name="Spread">Standard deviation of each.</param>
/// <param name="Least">Smallest ohms that a chance reading is spread over.</param>
/// <param name="Most">Largest.</param>
internal sealed record ResistorReading(double? Shown, double[] Expected, double[] Spread, double Least, double Most)
{
    /// <summary>How much likelier the display is with that end than with no end that has a resistor.</summary>
    public double LogRatio(int which, NamingWay way)
    {
        if (Shown is not { } shown)
        {
            return Math.Log(way.Missed / (1 - way.Imagined));
        }

        var chance = way.Imagined / (Math.Max(shown, Least) * Math.Log(Most / Least));
        var score = (shown - Expected[which]) / Spread[which];
        var right = (1 - way.Missed) * Math.Exp(Normal.LogDensity(score)) / Spread[which];
        return Math.Log((right + (way.Missed * chance)) / chance);
    }
}
