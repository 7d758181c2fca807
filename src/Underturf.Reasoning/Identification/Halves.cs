using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>
/// Which wires should carry it so that the ends touched tell most for the minutes: wires are added, those that may be here first, as long as one more brings more bits a minute than the
/// round so far; then each is tried out or in once more.
/// </summary>
internal sealed class Halves(Standing standing, NamingWay way)
{
    /// <summary>An end that would tell less than this many bits is not touched.</summary>
    private const double Little = 0.003;

    /// <summary>A pair less likely than this is out of the question.</summary>
    private const double Least = 1e-9;

    private readonly int none = standing.Carriers;
    private readonly Odds odds = standing.Odds();
    private readonly int[] ends = [.. standing.ToTouch(way)];
    private readonly double[] yes = new double[standing.Touchables];
    private readonly double[] noise = new double[standing.Touchables];
    private readonly double[] entropy = new double[standing.Touchables];
    private readonly bool[] put = new bool[standing.Carriers];
    private readonly EndStates states = standing.States(way);

    /// <summary>For each pair what is expected with and without something on the wire; pairs out of the question stay empty.</summary>
    private readonly Told[] with = new Told[standing.Touchables * (standing.Carriers + 1)];
    private readonly Told[] without = new Told[standing.Touchables * (standing.Carriers + 1)];

    private readonly record struct Told(double Chance, double Bits);

    public (bool[] Put, List<int> Touch, double Bits) Choose()
    {
        Begin();
        var wires = standing.ToCarry(way).OrderByDescending(Open).ToList();
        var minutes = standing.Crew.Change(way, standing.Turned) + ends.Sum(e => standing.TouchMinutes(way, e));
        var bits = 0.0;
        foreach (var wire in wires.Where(_ => put.Count(p => p) < way.Most))
        {
            var gain = Gain(wire);
            if (gain > 1e-9 && gain * minutes >= bits * way.WireMinutes)
            {
                Flip(wire);
                (bits, minutes) = (bits + gain, minutes + way.WireMinutes);
            }
        }

        foreach (var wire in wires.Where(w => put[w] && Gain(w) > 1e-9).ToList())
        {
            Flip(wire);
        }

        var told = ends.Select(e => (End: e, Bits: entropy[e] - noise[e])).Where(t => t.Bits > Little).ToList();
        return (put, [.. told.Select(t => t.End)], told.Sum(t => t.Bits));
    }

    /// <summary>Entropy of a chance.</summary>
    public static double Bits(double p) => p is <= 0 or >= 1 ? 0 : -((p * Math.Log2(p)) + ((1 - p) * Math.Log2(1 - p)));

    private void Begin()
    {
        foreach (var e in ends)
        {
            var last = -1;
            for (var w = 0; w <= none; w++)
            {
                var share = odds[e, w];
                if (share > Least)
                {
                    var at = (e * (none + 1)) + w;
                    (with[at], without[at]) = last >= 0 && states.AreAlike(e, w, last) ? (with[at - w + last], without[at - w + last]) : Expected(e, w);
                    yes[e] += share * without[at].Chance;
                    noise[e] += share * without[at].Bits;
                    last = w;
                }
            }

            entropy[e] = Bits(yes[e]);
        }
    }

    private (Told With, Told Without) Expected(int end, int wire)
    {
        var (on, off) = states.ToAnswer(end, wire);
        return (new Told(on, Bits(on)), new Told(off, Bits(off)));
    }

    private double Open(int wire) => ends.Sum(e => odds[e, wire] is var share && share > 0.5 ? 1 - share : share);

    /// <summary>Bits that come by putting it on a wire, or by taking it off.</summary>
    private double Gain(int wire)
    {
        var gain = 0.0;
        foreach (var e in ends)
        {
            var share = odds[e, wire];
            if (share > Least)
            {
                var (step, blur) = Change(e, wire);
                gain += Bits(yes[e] + (share * step)) - entropy[e] - (share * blur);
            }
        }

        return gain;
    }

    private void Flip(int wire)
    {
        foreach (var e in ends)
        {
            var (step, blur) = Change(e, wire);
            yes[e] += odds[e, wire] * step;
            noise[e] += odds[e, wire] * blur;
            entropy[e] = Bits(yes[e]);
        }

        put[wire] = !put[wire];
    }

    private (double Step, double Blur) Change(int end, int wire)
    {
        var at = (end * (none + 1)) + wire;
        var (was, now) = put[wire] ? (with[at], without[at]) : (without[at], with[at]);
        return (now.Chance - was.Chance, now.Bits - was.Bits);
    }
}
