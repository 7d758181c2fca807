using Underturf.Numerics;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>
/// Ends that come from no controller may be the far part of a conductor that is cut on the way. A source put on such an end makes the valve click that it leads on to; touches at the
/// controller cannot tell it from a wire of no controller.
/// </summary>
internal sealed class FarParts
{
    private readonly NamingPractice book;
    private readonly Bundle bundle;

    /// <summary>For each end and wire the logarithm of the chance of all clicks, where it leads on to that wire's valve and, last, to none.</summary>
    private readonly double[][] leads;

    /// <summary>The same of what somebody said that it carries.</summary>
    private readonly double[][] said;

    /// <summary>For each end how likely it is the far part of each station's conductor, if it is one at all, by its looks.</summary>
    private readonly double[][] looks;

    public FarParts(Bundle bundle, NamingPractice book, Beforehand before, IReadOnlyList<NotedTouching> touches)
    {
        (this.bundle, this.book) = (bundle, book);
        leads = [.. bundle.Ends.Select(_ => new double[bundle.Wires.Count + 1])];
        said = Said(before);
        looks = [.. bundle.Ends.Select((_, e) => ByLooks(e, before))];
        foreach (var touch in touches.Select(t => t.Touching).Where(t => t.Way.Shows == NamingSign.Onward))
        {
            var mine = leads[Array.IndexOf(touch.Put, true)];
            for (var w = 0; w < mine.Length; w++)
            {
                mine[w] += touch.Touched.Sum(t => Clicked(touch, t, t == w ? 1 - touch.Way.Missed : touch.Way.Imagined));
            }
        }
    }

    /// <summary>Takes the clicks into a table, and what was said of an end if it comes from no controller.</summary>
    public void Speak(NamingTable table)
    {
        foreach (var e in Enumerable.Range(0, leads.Length).Where(e => WasHeard(e) || said[e].Any(log => log != 0)))
        {
            // Ends that are joined here lead on; one that was noted alone may be joined all the same.
            var joined = bundle.Ends[e].Ends.Count > 1 ? 1 : book.LeadsOn;
            for (var w = 0; w < bundle.Wires.Count; w++)
            {
                table.Add(e, w, LogMath.LogAdd(Math.Log(joined) + leads[e][w], Math.Log(1 - joined) + leads[e][^1]));
            }

            table.Add(e, bundle.Wires.Count, LogNone(e));
        }
    }

    /// <summary>True where somebody listened at valves with a source on this end.</summary>
    public bool WasHeard(int end) => leads[end].Any(log => log != 0);

    /// <summary>How likely an end is the far part of each wire, given that it comes from no controller.</summary>
    public double Share(int end, int wire) => book.CutOff * looks[end][wire] * Math.Exp(leads[end][wire] + said[end][wire] - LogNone(end));

    /// <summary>Who says one station of two ends that are not joined may mean both parts of its conductor; who says it of one end means the one that comes from the controller.</summary>
    private double[][] Said(Beforehand before)
    {
        var twice = bundle.Ends.SelectMany(e => before.Said(e).Select(s => s.Station).OfType<string>().Distinct()).GroupBy(s => s).Where(same => same.Count() > 1).Select(same => same.Key).ToHashSet();
        return [.. bundle.Ends.Select(end =>
        {
            var logs = before.LogSaid(end);
            return before.Said(end).Any(s => s.Station is { } station && twice.Contains(station)) ? logs : [.. logs.Select(_ => logs[^1])];
        })];
    }

    private static double Clicked(Touching touch, int wire, double chance) => Math.Log(touch.Answered.Contains(wire) ? chance : 1 - chance);

    private double LogNone(int end) =>
        LogMath.LogSumExp([Math.Log(1 - book.CutOff) + leads[end][^1] + said[end][^1], .. looks[end].Select((share, w) => Math.Log(book.CutOff * share) + leads[end][w] + said[end][w])]);

    private double[] ByLooks(int end, Beforehand before)
    {
        double[] odds = [.. bundle.Wires.Select(w => w.Role == WireRole.Station ? Math.Exp(before.Looks(bundle.Ends[end], w)) : 0)];
        var sum = odds.Sum();
        return sum > 0 ? [.. odds.Select(o => o / sum)] : odds;
    }
}
