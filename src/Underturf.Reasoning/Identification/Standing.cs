using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>What a plan chooses its next round by, and what a round costs from here: the only place that says so.</summary>
/// <param name="Shares">For each end its wires and, last, none.</param>
/// <param name="Common">The end that a lead is clipped to; -1 where none is likely enough.</param>
/// <param name="Ready">Ends that need nothing more for this way.</param>
/// <param name="Spent">Minutes spent on getting each end ready, whatever for: an end freed is free for every way.</param>
/// <param name="Tried">Wires that were put on alone already.</param>
/// <param name="Checked">True where all wires together were read against this common.</param>
internal sealed record Standing(NamingTable Table, double[] Shares, int Common, bool[] Ready, double[] Spent, bool[] Tried, bool Checked, Crew Crew)
{
    private int Wide => Table.Wires + 1;

    /// <summary>Ends that can be touched this way.</summary>
    public IEnumerable<int> Ends(NamingWay way) => Enumerable.Range(0, Table.Ends).Where(e => !way.NeedsCommon || e != Common);

    /// <summary>Wires that it can be put on.</summary>
    public IEnumerable<int> Wires(NamingWay way) => Enumerable.Range(0, Table.Wires).Where(w => way.FitsCommon || !Table.IsCommon(w));

    public int Lead(NamingWay way) => way.NeedsCommon ? Common : NamingTable.NoLead;

    public double Share(int end, int wire) => Shares[(end * Wide) + wire];

    /// <summary>Share of an end's likeliest wire.</summary>
    public double Top(int end)
    {
        var best = 0.0;
        for (var w = 0; w < Wide; w++)
        {
            best = Math.Max(best, Share(end, w));
        }

        return best;
    }

    /// <summary>What wrong and missing names cost by now.</summary>
    public double Left(NamingPractice book) => Enumerable.Range(0, Table.Ends).Sum(e => book.Left(Top(e)));

    public double Minutes(NextTouches next) => MinutesBefore(next) + next.Touch.Sum(e => TouchMinutes(next.Plan.Way, e));

    /// <summary>Minutes to tell all that is open, if every round told as much as this one; what is got ready is ready for all of them.</summary>
    public double MinutesToEnd(NextTouches next)
    {
        var again = MinutesBefore(next) + (next.Touch.Count * next.Plan.Way.TouchMinutes);
        var reading = next.Plan.Way.Shows == NamingSign.Ohms ? next.Plan.Way.PutMinutes + next.Plan.Way.WireMinutes : again;
        return Minutes(next) + (reading * Math.Max(0, (OpenBits / Math.Max(next.Bits, 1e-9)) - 1));
    }

    private double OpenBits => Shares.Sum(p => p > 0 ? -p * Math.Log2(p) : 0);

    /// <summary>The walk and putting on. Known resistors that are all fitted are read one after the other at the controller, the way back was counted with the first.</summary>
    public double MinutesBefore(NextTouches next)
    {
        var way = next.Plan.Way;
        var stays = way.Shows == NamingSign.Ohms && next.Touch.All(e => Ready[e]);
        return (stays ? way.PutMinutes : Crew.Change(way)) + (next.Put.Count(p => p) * way.WireMinutes);
    }

    /// <summary>To touch an end, and to get it ready first.</summary>
    public double TouchMinutes(NamingWay way, int end) => way.TouchMinutes + (Ready[end] ? 0 : Math.Max(0, way.ReadyMinutes - Spent[end]));

    /// <summary>How likely the lead is on a common.</summary>
    public double CommonShare => CommonShareOf(Table, Shares, Common);

    /// <summary>The end that is a common likeliest, where that is likely enough to clip a lead to it.</summary>
    public static int LikelyCommon(NamingTable table, double[] shares, double likelyEnough)
    {
        var best = Enumerable.Range(0, table.Ends).MaxBy(e => CommonShareOf(table, shares, e));
        return CommonShareOf(table, shares, best) >= likelyEnough ? best : NamingTable.NoLead;
    }

    private static double CommonShareOf(NamingTable table, double[] shares, int end) =>
        Enumerable.Range(0, table.Wires).Where(table.IsCommon).Sum(w => shares[(end * (table.Wires + 1)) + w]);
}
