using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>One round: something on some wires, some ends touched, and what came of it.</summary>
/// <param name="Put">Whether each wire carried it; each end where it is turned.</param>
/// <param name="Touched">The ends that were touched; the wires where it is turned.</param>
/// <param name="Answered">Those of them that answered.</param>
internal sealed record Touching(NamingWay Way, bool[] Put, IReadOnlyList<int> Touched, IReadOnlySet<int> Answered)
{
    /// <summary>True where it was put on at the place and wires were touched at the controller.</summary>
    public bool Turned { get; init; }

    /// <summary>For known resistors: what the meter showed and what is fitted to each that was touched.</summary>
    public ResistorReading? Ohms { get; init; }

    /// <summary>The end that the other lead was on, taken for the common; -1 where there is none.</summary>
    public int Against { get; init; } = NamingTable.NoLead;

    /// <summary>The end that all of it hangs on being a common; none where the way needs no common.</summary>
    public int Lead => Way.NeedsCommon ? Against : NamingTable.NoLead;

    /// <summary>Logarithm of the chance of what was answered where nothing could come through.</summary>
    public double LogImagined(int touched) => Math.Log(Answered.Contains(touched) ? Way.Imagined : 1 - Way.Imagined);

    /// <summary>Known resistors read through all wires together: it tells whether the other lead is on the common, no more.</summary>
    public bool IsCheck => Way.Shows == NamingSign.Ohms && Put.Count(p => p) > 1;

    /// <summary>Logarithm of the chance of a reading, or of none, through all wires together.</summary>
    public double LogChecked(bool isRight)
    {
        var chance = isRight ? 1 - Way.Missed : Way.Imagined;
        return Math.Log(Ohms is { Shown: not null } ? chance : 1 - chance);
    }

    /// <summary>Which of those touched a comparison or a reading showed to be it; -1 where none; nothing where that is not what it shows.</summary>
    public int? Shows => IsCheck || Way.Shows is NamingSign.Answers or NamingSign.Onward ? null
        : Way.Shows == NamingSign.Loudest ? (Answered.Count == 0 ? -1 : Answered.Min())
        : Ohms is { } reading ? (reading.Closest is { } closest ? Touched[closest] : -1) : null;

    /// <summary>True where one was touched while the other carried.</summary>
    public bool Joins(int end, int wire) => Turned ? Put[end] && Touched.Contains(wire) : Put[wire] && Touched.Contains(end);

    /// <summary>True where it answered in such a round.</summary>
    public bool Answers(int end, int wire) => Answered.Contains(Turned ? wire : end);

    /// <summary>What the round says beside each end's yes or no: logarithms of chances, but for what is the same for all.</summary>
    public IEnumerable<(int Touched, int Carrier, double Log)> Speaks() => Way.Shows switch
    {
        NamingSign.Loudest => Loudest(Array.IndexOf(Put, true)),
        NamingSign.Ohms when Ohms is { } ohms => Resistors(Array.IndexOf(Put, true), ohms),
        _ => [],
    };

    /// <summary>It is one of the ends touched, or none of them: then any is as likely to be the loudest.</summary>
    private IEnumerable<(int Touched, int Carrier, double Log)> Loudest(int wire)
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

    private IEnumerable<(int Touched, int Carrier, double Log)> Resistors(int wire, ResistorReading reading)
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
    /// <summary>Standard deviations from the nearest: farther away it is no reading of any of them.</summary>
    private const double Far = 5;

    /// <summary>Which of the resistors the display shows; nothing where it shows none of them, or nothing at all.</summary>
    public int? Closest => Shown is not { } shown ? null
        : Expected.Index().Where(e => e.Item < Most).Select(e => (e.Index, Miss: Math.Abs(shown - e.Item) / Spread[e.Index])).OrderBy(e => e.Miss).ToList() is [var (index, miss), ..] && miss < Far ? index : null;

    /// <summary>Fewer ohms than all the resistors would show side by side: leads that touch, or a conductor shorted to the common.</summary>
    public bool IsShort => Shown is { } shown && shown < 1 / Expected.Index().Where(e => e.Item < Most).Sum(e => 1 / Math.Max(1e-3, e.Item - (Far * Spread[e.Index])));

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
