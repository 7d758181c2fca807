using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>Plans for one bundle: rehearsed, ranked, and the next round of one in words.</summary>
internal sealed class PlanDesk(Case matter, Bundle bundle, NamingBelief belief, Crew crew, IReadOnlyList<NotedTouching> touches)
{
    private readonly NamingPractice book = matter.Book.Naming;
    private readonly double[] shares = belief.Shares.ToArray();

    /// <summary>Resistors for all ends, and for all wires.</summary>
    public Kits Kits { get; } = matter.Book.InstrumentOf(Measure.StationOhms) is { } meter
        ? new Kits(Kit(bundle, bundle.Ends.Count, meter, matter.Book.Naming), Kit(bundle, bundle.Wires.Count, meter, matter.Book.Naming))
        : new Kits(null, null);

    /// <summary>The end that is the common likely enough to clip a lead to it; -1 where none is.</summary>
    public int Common { get; } = Identification.Standing.LikelyCommon(belief.Table, belief.Shares.ToArray(), matter.Book.Naming.CommonAt);

    /// <summary>Cheapest first. What takes three times the cheapest so far is not played to its end; a plan that was asked for and stands alone is not played at all.</summary>
    public IReadOnlyList<Rehearsed> Rank(ulong seed, string? wanted)
    {
        var asked = Asked(wanted).OrderByDescending(p => p.Routine).ToList();
        if (wanted is not null && asked is [var only])
        {
            return [new Rehearsed(only, 0, 0, 0, 0)];
        }

        var (rehearsal, ranked, best) = (new Rehearsal(Stage(wanted)), new List<Rehearsed>(), double.MaxValue);
        foreach (var plan in asked)
        {
            ranked.Add(rehearsal.Of(plan, Standing(plan), seed, 3 * best));
            best = Math.Min(best, ranked[^1].Loss);
        }

        return [.. ranked.OrderBy(r => r.Loss)];
    }

    /// <summary>The plan that mostly leads, rehearsed alone; nothing where no plan can be followed or every end has its name.</summary>
    public Rehearsed? Likely(ulong seed)
    {
        var all = Possible.Where(p => p.Then is null).ToList();
        var plan = all.Find(p => p.Routine == Routine.OneTrip) ?? all.Find(p => p.Routine == Routine.ByHalves);
        return plan is null || Enumerable.Range(0, bundle.Ends.Count).All(e => belief.Best(e).Share >= book.NameAt)
            ? null
            : new Rehearsal(Stage(null)).Of(plan, Standing(plan), seed, double.MaxValue);
    }

    /// <summary>By the whole name, or by part of it.</summary>
    private IReadOnlyList<Plan> Asked(string? wanted)
    {
        var all = Possible.Where(p => wanted is null || Name(p with { Then = null }).Contains(wanted, StringComparison.OrdinalIgnoreCase)).ToList();
        return Possible.Where(p => string.Equals(Name(p), wanted, StringComparison.OrdinalIgnoreCase)).ToList() is [var only] ? [only] : all;
    }

    /// <summary>No plan is expected to cost less than to leave things as they are. Who names a plan has decided for himself.</summary>
    public bool IsNotWorthIt(IReadOnlyList<Rehearsed> ranked, string? wanted) =>
        wanted is null && ranked is [var best, ..] && best.Loss >= new Rehearsal(Stage(wanted)).Stopping(Standing(best.Plan));

    /// <summary>Names of the plans that can be followed here.</summary>
    public IEnumerable<string> Names => Possible.Select(Name);

    private IEnumerable<Plan> Possible => Plan.All(book, Kits, crew).Where(p => Common >= 0 || !p.Way.NeedsCommon);

    public NextTouches? Next(Plan plan) => Choice.Of(plan, Standing(plan));

    private Stage Stage(string? wanted) => new(book, Kits, GivesUp: wanted is null);

    private Standing Standing(Plan plan) => new(belief.Table, shares, Common, Ready(plan.Way, plan.Turned), Spent(plan.Turned), Tried(plan.Way, plan.Turned), IsChecked(plan.Way, plan.Turned), crew, plan.Turned);

    private static ResistorKit? Kit(Bundle bundle, int count, InstrumentPractice meter, NamingPractice book) =>
        ResistorKit.For(count, bundle.Wires.Max(w => w.Ohms), bundle.Wires.Max(w => w.LogSpread), meter, book);

    public static string Name(Plan plan) => plan.Then is { } then ? $"{Name(plan with { Then = null })}, then {then.Way.Name}" : plan.Turned ? TurnedName(plan) : plan.Routine switch
    {
        Routine.ByHalves => $"{plan.Way.Name}, half of the wires at a time",
        Routine.TouchByTouch => $"{plan.Way.Name}, touch by touch",
        Routine.OneTrip => $"{plan.Way.Name}, all in one trip",
        _ => $"{plan.Way.Name}, one wire at a time",
    };

    private static string TurnedName(Plan plan) => plan.Routine switch
    {
        Routine.ByHalves => $"{plan.Way.Name} from the box, half of the ends at a time",
        Routine.TouchByTouch => $"{plan.Way.Name} from the box, touch by touch",
        Routine.OneTrip => $"{plan.Way.Name} at the controller, all in one trip",
        _ => $"{plan.Way.Name} from the box, one end at a time",
    };

    /// <summary>What this way made ready before is ready.</summary>
    private bool[] Ready(NamingWay way, bool turned)
    {
        var before = Before(way, turned).SelectMany(t => t.Touching.Touched).ToHashSet();
        return [.. Enumerable.Range(0, bundle.Count(wires: turned)).Select(one => way.Shows == NamingSign.Ohms ? IsFitted(one, turned) : before.Contains(one))];
    }

    private IEnumerable<NotedTouching> Before(NamingWay way, bool turned) => touches.Where(t => t.Touching.Way == way && t.Touching.Turned == turned);

    /// <summary>The most that a way needed to get each ready that was touched by it.</summary>
    private double[] Spent(bool turned)
    {
        var spent = new double[bundle.Count(wires: turned)];
        foreach (var (touching, one) in touches.Where(t => t.Touching.Turned == turned).SelectMany(t => t.Touching.Touched.Select(one => (t.Touching, one))))
        {
            spent[one] = Math.Max(spent[one], touching.Way.ReadyMinutes);
        }

        return spent;
    }

    /// <summary>What was read or heard alone this way, against this lead; an answer of yes or no is asked for again where it is worth it.</summary>
    private bool[] Tried(NamingWay way, bool turned)
    {
        var lead = way.NeedsCommon ? Common : NamingTable.NoLead;
        var before = Before(way, turned).Where(t => t.Touching.Lead == lead && way.Shows != NamingSign.Answers && !t.Touching.IsCheck).Select(t => Array.IndexOf(t.Touching.Put, true)).ToHashSet();
        return [.. Enumerable.Range(0, bundle.Count(wires: !turned)).Select(before.Contains)];
    }

    private bool IsChecked(NamingWay way, bool turned) => Before(way, turned).Any(t => t.Touching.IsCheck && t.Touching.Lead == Common);

    /// <summary>Each end but the common with its resistor; each wire but commons where it is turned.</summary>
    public IEnumerable<(int Of, double Ohms)> Fitted(bool turned) => Kits.Of(turned) is not { } kit ? [] :
        Enumerable.Range(0, bundle.Count(wires: turned)).Where(one => turned ? bundle.Wires[one].Role != WireRole.Common : one != Common).Select(one => (one, kit.Ohms[one]));

    public bool IsFitted(int one, bool turned) => matter.History.Facts.Resistors.LastOrDefault(r => bundle.At(matter.View.Identity.Of(r.Fact.End), isWire: turned) == one) is { Fact.Ohms: not null };

    public double Minutes(NextTouches next) => Standing(next.Plan).Minutes(next);
}
