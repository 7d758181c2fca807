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
/// <param name="Then">What it gives way to as soon as the common stands out.</param>
/// <param name="Turned">True where it is put on at the place and wires are touched at the controller.</param>
internal sealed record Plan(NamingWay Way, Routine Routine, Plan? Then = null, bool Turned = false)
{
    /// <summary>Every plan that the book's ways allow.</summary>
    public static IEnumerable<Plan> All(NamingPractice book, Kits kits, Crew crew)
    {
        var all = book.Ways.Where(w => w.Owned && (!crew.Apart || crew.Source || !w.Live)).SelectMany(w => Routines(w, crew).Select(r => new Plan(w, r))).Where(p => kits.Ends is not null || p.Routine != Routine.OneTrip).ToList();
        var later = all.Where(p => p.Way.NeedsCommon && p.Routine == (kits.Ends is not null ? Routine.OneTrip : Routine.ByHalves)).ToList();
        return all
            .Concat(all.Where(p => !p.Way.NeedsCommon && p.Routine == Routine.ByHalves).SelectMany(p => later.Select(l => p with { Then = l })))
            .Concat(book.Ways.Where(w => w.Owned && w.Back is not null && !crew.Apart && (crew.Source || !w.Live)).SelectMany(w => BackRoutines(w, kits, crew).Select(r => new Plan(w, r, Turned: true))));
    }

    private static IEnumerable<Routine> BackRoutines(NamingWay way, Kits kits, Crew crew) => way.Shows switch
    {
        NamingSign.Apart or NamingSign.Onward => [],
        NamingSign.Ohms => kits.Wires is null ? [] : [Routine.OneTrip],
        NamingSign.Answers when way.Most > 1 => crew.People < 2 ? [Routine.ByHalves] : [Routine.ByHalves, Routine.TouchByTouch],
        _ => [Routine.OneByOne],
    };

    private static IEnumerable<Routine> Routines(NamingWay way, Crew crew) => way.Shows switch
    {
        NamingSign.Apart or NamingSign.Onward => [],
        NamingSign.Ohms when crew.Apart => [],
        _ when crew.Apart => [Routine.OneByOne],
        NamingSign.Ohms => [Routine.OneTrip],
        NamingSign.Answers when way.Most > 1 => crew.Walks(way, turned: false) ? [Routine.OneByOne, Routine.ByHalves] : [Routine.OneByOne, Routine.ByHalves, Routine.TouchByTouch],
        _ => [Routine.OneByOne],
    };
}

/// <summary>What the minutes hang on beside the book.</summary>
/// <param name="WalkMinutes">From the controller to the place.</param>
/// <param name="People">One walks for each change of what is put on; two call it out.</param>
/// <param name="Remote">One person who can switch from the place.</param>
/// <param name="Apart">The ends are those of a controller: each wire is put on at a place of its own, so that one is walked to after the other.</param>
/// <param name="Source">A portable 24 V source can be carried: to the valves of ends at a controller, or to the ends of any other place.</param>
internal sealed record Crew(double WalkMinutes, int People, bool Remote, bool Apart = false, bool Source = false)
{
    /// <summary>Minutes to change what carries it and to be back where it is touched.</summary>
    public double Change(NamingWay way, bool turned) => way.PutMinutes + (Walks(way, turned) ? 2 * WalkMinutes : Apart ? WalkMinutes : 0);

    /// <summary>Stations that are switched from the place spare the walk only where it is put on at the controller.</summary>
    public bool Walks(NamingWay way, bool turned) => People < 2 && (Apart || turned || !(Remote && way.Live));
}

/// <summary>What is done next: something on some wires, some ends touched in this order.</summary>
/// <param name="Bits">What it is expected to tell.</param>
internal sealed record NextTouches(Plan Plan, bool[] Put, IReadOnlyList<int> Touch, double Bits);
