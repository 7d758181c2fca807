using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>
/// What a plan chooses its next round by, and what a round costs from here: the only place that says so. Wires carry and ends are touched; where it is turned, ends carry and wires are
/// touched.
/// </summary>
/// <param name="Shares">For each end its wires and, last, none.</param>
/// <param name="Common">The end that a lead is clipped to; -1 where none is likely enough.</param>
/// <param name="Ready">What is touched and needs nothing more for this way.</param>
/// <param name="Spent">Minutes spent on getting each ready, whatever for: an end freed is free for every way.</param>
/// <param name="Tried">What was put on alone already.</param>
/// <param name="Checked">True where all together were read against this common.</param>
/// <param name="Turned">True where it is put on at the place and wires are touched at the controller.</param>
internal sealed record Standing(NamingTable Table, double[] Shares, int Common, bool[] Ready, double[] Spent, bool[] Tried, bool Checked, Crew Crew, bool Turned = false)
{
    /// <summary>So small a share has no information that counts.</summary>
    private const double Nothing = 1e-12;

    private int Wide => Table.Wires + 1;

    /// <summary>How many can carry it.</summary>
    public int Carriers => Turned ? Table.Ends : Table.Wires;

    /// <summary>How many can be touched.</summary>
    public int Touchables => Turned ? Table.Wires : Table.Ends;

    /// <summary>What can be touched this way.</summary>
    public IEnumerable<int> ToTouch(NamingWay way) => Turned ? Wires(!way.NeedsCommon) : Ends(way);

    /// <summary>What it can be put on. From the place nothing has to come back by the common, unless a lead is on it.</summary>
    public IEnumerable<int> ToCarry(NamingWay way) => Turned ? Ends(way) : Wires(way.FitsCommon);

    /// <summary>The same shares as they look from what is touched.</summary>
    public Odds Odds() => Identification.Odds.Of(Shares, Table.Ends, Table.Wires, Turned);

    /// <summary>How what is touched behaves under a way that answers yes or no.</summary>
    public EndStates States(NamingWay way) => Table.States(way, Lead(way), Turned);

    private IEnumerable<int> Ends(NamingWay way) => Enumerable.Range(0, Table.Ends).Where(e => !way.NeedsCommon || e != Common);

    private IEnumerable<int> Wires(bool withCommon) => Enumerable.Range(0, Table.Wires).Where(w => withCommon || !Table.IsCommon(w));

    public int Lead(NamingWay way) => way.NeedsCommon ? Common : NamingTable.NoLead;

    /// <summary>Share of an end's likeliest wire.</summary>
    public double Top(int end)
    {
        var best = 0.0;
        for (var at = end * Wide; at < (end + 1) * Wide; at++)
        {
            best = Math.Max(best, Shares[at]);
        }

        return best;
    }

    /// <summary>What wrong and missing names cost by now.</summary>
    public double Left(NamingPractice book) => Enumerable.Range(0, Table.Ends).Sum(e => book.Left(Top(e)));

    public double Minutes(NextTouches next) => MinutesBefore(next) + next.Touch.Sum(t => TouchMinutes(next.Plan.Way, t));

    /// <summary>Minutes to tell all that is open, if every round told as much as this one; what is got ready is ready for all of them.</summary>
    public double MinutesToEnd(NextTouches next)
    {
        var again = MinutesBefore(next) + (next.Touch.Count * next.Plan.Way.TouchMinutes);
        var reading = next.Plan.Way.Shows == NamingSign.Ohms ? next.Plan.Way.PutMinutes + next.Plan.Way.WireMinutes : again;
        return Minutes(next) + (reading * Math.Max(0, (OpenBits / Math.Max(next.Bits, 1e-9)) - 1));
    }

    private double OpenBits
    {
        get
        {
            var bits = 0.0;
            foreach (var p in Shares)
            {
                bits += p > Nothing ? -p * Math.Log2(p) : 0;
            }

            return bits;
        }
    }

    /// <summary>The walk and putting on. Where known resistors are all fitted one reads after the other at the far side; the way back was counted with the first.</summary>
    public double MinutesBefore(NextTouches next)
    {
        var way = next.Plan.Way;
        var stays = way.Shows == NamingSign.Ohms && next.Touch.All(t => Ready[t]);
        return (stays ? way.PutMinutes : Crew.Change(way, Turned)) + (next.Put.Count(p => p) * way.WireMinutes);
    }

    /// <summary>To touch an end or a wire, and to get it ready first.</summary>
    public double TouchMinutes(NamingWay way, int touched) => way.TouchMinutes + (Ready[touched] ? 0 : Math.Max(0, way.ReadyMinutes - Spent[touched]));

    /// <summary>How likely the lead is on a common.</summary>
    public double CommonShare => CommonShareOf(Table, Shares, Common);

    /// <summary>The end that is a common likeliest, where that is likely enough to clip a lead to it.</summary>
    public static int LikelyCommon(NamingTable table, double[] shares, double likelyEnough)
    {
        var best = Enumerable.Range(0, table.Ends).MaxBy(e => CommonShareOf(table, shares, e));
        return CommonShareOf(table, shares, best) >= likelyEnough ? best : NamingTable.NoLead;
    }

    private static double CommonShareOf(NamingTable table, double[] shares, int end)
    {
        var sum = 0.0;
        foreach (var common in table.Commons)
        {
            sum += shares[(end * (table.Wires + 1)) + common];
        }

        return sum;
    }
}
