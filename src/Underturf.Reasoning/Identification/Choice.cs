using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>What a plan does next, by what is believed now.</summary>
internal static class Choice
{
    /// <summary>An end that is a wire with less than this chance is not tried for it.</summary>
    private const double Hopeless = 1e-3;

    /// <summary>A wire about which the ends are surer than this, in bits, is not put on alone.</summary>
    private const double Little = 1e-3;

    /// <summary>With a common less sure than this all wires are read together first.</summary>
    private const double Sure = 0.95;

    /// <returns>Nothing where the plan can tell no more.</returns>
    public static NextTouches? Of(Plan plan, Standing standing) => plan.Routine switch
    {
        _ when plan.Way.NeedsCommon && standing.Common < 0 => null,
        Routine.ByHalves => ByHalves(plan, standing),
        Routine.TouchByTouch => SingleTouch.Choose(standing, plan.Way) is { } touch ? new NextTouches(plan, touch.Put, [touch.End], touch.Bits) : null,
        Routine.OneTrip => (standing is { Checked: false, CommonShare: < Sure } ? Together(plan, standing) : null) ?? Alone(plan, standing, all: true),
        // What misled a comparison of loudness misleads it again: each wire is heard once.
        _ when plan.Way.Shows == NamingSign.Loudest => Alone(plan, standing, all: true),
        _ => Alone(plan, standing, all: false) ?? Alone(plan, standing with { Tried = new bool[standing.Carriers] }, all: false),
    };

    /// <summary>Over range: the lead is on the wrong end, which one reading tells instead of many.</summary>
    private static NextTouches? Together(Plan plan, Standing standing)
    {
        var (put, ends) = (new bool[standing.Carriers], standing.ToTouch(plan.Way).ToList());
        foreach (var wire in standing.ToCarry(plan.Way))
        {
            put[wire] = true;
        }

        return ends.Count == 0 || put.Count(p => p) < 2 ? null : new NextTouches(plan, put, ends, Halves.Bits(standing.CommonShare));
    }

    private static NextTouches? ByHalves(Plan plan, Standing standing)
    {
        var (put, touch, bits) = new Halves(standing, plan.Way).Choose();
        return touch.Count == 0 || !put.Contains(true) ? null : new NextTouches(plan, put, touch, bits);
    }

    /// <summary>The wire about which the ends are least sure; the likeliest ends first.</summary>
    private static NextTouches? Alone(Plan plan, Standing standing, bool all)
    {
        var (odds, ends) = (standing.Odds(), standing.ToTouch(plan.Way).ToArray());
        var open = standing.ToCarry(plan.Way).Where(w => !standing.Tried[w]).Select(w => (Wire: w, Bits: Open(odds, ends, w))).Where(w => w.Bits > Little).ToList();
        if (open.Count == 0)
        {
            return null;
        }

        var (wire, bits) = open.MaxBy(w => w.Bits);
        var put = new bool[standing.Carriers];
        put[wire] = true;
        return new NextTouches(plan, put, [.. ends.Where(e => all || odds[e, wire] > Hopeless).OrderByDescending(e => odds[e, wire])], bits);
    }

    private static double Open(Odds odds, int[] ends, int wire)
    {
        var (bits, last, told) = (0.0, 0.0, 0.0);
        foreach (var e in ends)
        {
            // Ends that are alike stand beside each other in a long bundle.
            if (odds[e, wire] != last)
            {
                last = odds[e, wire];
                told = Halves.Bits(last);
            }

            bits += told;
        }

        return bits;
    }
}
