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

    private readonly NamingTable table = standing.Table;
    private readonly int[] ends = [.. standing.Ends(way)];
    private readonly double[] yes = new double[standing.Table.Ends];
    private readonly double[] noise = new double[standing.Table.Ends];
    private readonly bool[] put = new bool[standing.Table.Wires];
    private readonly EndStates states = standing.Table.States(way, standing.Lead(way));

    /// <summary>For each pair what is expected with and without something on the wire; pairs out of the question stay empty.</summary>
    private readonly Told[] with = new Told[standing.Table.Ends * (standing.Table.Wires + 1)];
    private readonly Told[] without = new Told[standing.Table.Ends * (standing.Table.Wires + 1)];

    private readonly record struct Told(double Chance, double Bits);

    public (bool[] Put, List<int> Touch, double Bits) Choose()
    {
        Begin();
        var wires = standing.Wires(way).OrderByDescending(Open).ToList();
        var minutes = standing.Crew.Change(way) + ends.Sum(e => standing.TouchMinutes(way, e));
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

        var told = ends.Select(e => (End: e, Bits: Bits(yes[e]) - noise[e])).Where(t => t.Bits > Little).ToList();
        return (put, [.. told.Select(t => t.End)], told.Sum(t => t.Bits));
    }

    /// <summary>Entropy of a chance.</summary>
    public static double Bits(double p) => p is <= 0 or >= 1 ? 0 : -((p * Math.Log2(p)) + ((1 - p) * Math.Log2(1 - p)));

    private void Begin()
    {
        foreach (var e in ends)
        {
            for (var w = 0; w <= table.Wires; w++)
            {
                var share = standing.Share(e, w);
                if (share > Least)
                {
                    var (at, on, off) = ((e * (table.Wires + 1)) + w, states.ToAnswer(e, w, true), states.ToAnswer(e, w, false));
                    (with[at], without[at]) = (new Told(on, Bits(on)), new Told(off, Bits(off)));
                    yes[e] += share * off;
                    noise[e] += share * without[at].Bits;
                }
            }
        }
    }

    private double Open(int wire) => ends.Sum(e => standing.Share(e, wire) is var share && share > 0.5 ? 1 - share : share);

    /// <summary>Bits that come by putting it on a wire, or by taking it off.</summary>
    private double Gain(int wire)
    {
        var gain = 0.0;
        foreach (var e in ends)
        {
            var share = standing.Share(e, wire);
            if (share > Least)
            {
                var (step, blur) = Change(e, wire);
                gain += Bits(yes[e] + (share * step)) - Bits(yes[e]) - (share * blur);
            }
        }

        return gain;
    }

    private void Flip(int wire)
    {
        foreach (var e in ends)
        {
            var (step, blur) = Change(e, wire);
            yes[e] += standing.Share(e, wire) * step;
            noise[e] += standing.Share(e, wire) * blur;
        }

        put[wire] = !put[wire];
    }

    private (double Step, double Blur) Change(int end, int wire)
    {
        var at = (end * (table.Wires + 1)) + wire;
        var (was, now) = put[wire] ? (with[at], without[at]) : (without[at], with[at]);
        return (now.Chance - was.Chance, now.Bits - was.Bits);
    }
}
