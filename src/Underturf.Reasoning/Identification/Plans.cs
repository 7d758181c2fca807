using Underturf.Property.Practice;

namespace Underturf.Reasoning.Identification;

/// <summary>How a way is used on a whole bundle.</summary>
internal enum Routine
{
    /// <summary>One wire carries it, ends are touched until one answers.</summary>
    OneByOne,

    /// <summary>About half of what is left carries it, every end is touched; then another half.</summary>
    ByHalves,

    /// <summary>Before each touch it is put on the wires that make this touch tell most: where nobody has to walk for it.</summary>
    TouchByTouch,

    /// <summary>Everything is fitted at the box, then every wire is read at the controller.</summary>
    OneTrip,
}

/// <summary>A way and how it is used.</summary>
internal sealed record Plan(NamingWay Way, Routine Routine)
{
    /// <summary>Every plan that the book's ways allow.</summary>
    public static IEnumerable<Plan> All(NamingPractice book, bool commonKnown, Crew crew) =>
        from way in book.Ways
        where way.Owned && (commonKnown || !way.NeedsCommon)
        from routine in Routines(way, crew)
        select new Plan(way, routine);

    private static IEnumerable<Routine> Routines(NamingWay way, Crew crew) => way.Shows switch
    {
        NamingSign.Apart => [],
        NamingSign.Ohms => [Routine.OneTrip],
        NamingSign.Answers when way.Most > 1 => crew.Walks(way) ? [Routine.OneByOne, Routine.ByHalves] : [Routine.OneByOne, Routine.ByHalves, Routine.TouchByTouch],
        _ => [Routine.OneByOne],
    };
}

/// <summary>What the minutes hang on beside the book.</summary>
/// <param name="WalkMinutes">From the controller to the place.</param>
/// <param name="People">One walks for each change of what is put on; two call it out.</param>
/// <param name="Remote">One person who can switch from the place.</param>
internal sealed record Crew(double WalkMinutes, int People, bool Remote)
{
    /// <summary>Minutes to change what carries it and to be back at the ends.</summary>
    public double Change(NamingWay way) => way.PutMinutes + (Walks(way) ? 2 * WalkMinutes : 0);

    public bool Walks(NamingWay way) => People < 2 && !(Remote && way.Live);
}

/// <summary>What is done next: something on some wires, some ends touched in this order.</summary>
/// <param name="Bits">What it is expected to tell.</param>
internal sealed record NextTouches(Plan Plan, bool[] Put, IReadOnlyList<int> Touch, double Bits);

/// <summary>What a plan chooses its next round by.</summary>
/// <param name="Shares">For each end its wires and, last, none.</param>
/// <param name="Common">The end that a lead is clipped to; -1 where none is known.</param>
/// <param name="Tried">Wires that were put on alone already.</param>
internal sealed record Standing(NamingTable Table, double[] Shares, int Common, bool[] Ready, bool[] Tried, Crew Crew)
{
    private int Wide => Table.Wires + 1;

    /// <summary>Ends that can be touched this way.</summary>
    public IEnumerable<int> Ends(NamingWay way) => Enumerable.Range(0, Table.Ends).Where(e => !way.NeedsCommon || e != Common);

    /// <summary>Wires that it can be put on.</summary>
    public IEnumerable<int> Wires(NamingWay way) => Enumerable.Range(0, Table.Wires).Where(w => way.FitsCommon || !Table.IsCommon(w));

    public double Share(int end, int wire) => Shares[(end * Wide) + wire];

    public double TouchMinutes(NamingWay way, int end) => way.TouchMinutes + (Ready[end] ? 0 : way.ReadyMinutes);

    public double Minutes(NextTouches next) => Crew.Change(next.Plan.Way) + (next.Put.Count(p => p) * next.Plan.Way.WireMinutes) + next.Touch.Sum(e => TouchMinutes(next.Plan.Way, e));
}
