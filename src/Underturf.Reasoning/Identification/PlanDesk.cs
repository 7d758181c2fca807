using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>Plans for one bundle: rehearsed, ranked, and the next round of one in words.</summary>
internal sealed class PlanDesk(Case matter, Bundle bundle, NamingBelief belief, Crew crew, IReadOnlyList<NotedTouching> touches)
{
    private readonly NamingPractice book = matter.Book.Naming;
    private readonly double[] shares = belief.Shares.ToArray();

    /// <summary>Resistors for all ends.</summary>
    public ResistorKit? Kit { get; } = matter.Book.InstrumentOf(Measure.StationOhms) is { } meter
        ? ResistorKit.For(bundle.Ends.Count, bundle.Wires.Max(w => w.Ohms), bundle.Wires.Max(w => w.LogSpread), meter, matter.Book.Naming)
        : null;

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
            ranked.Add(rehearsal.Of(plan, Standing(plan.Way), seed, 3 * best));
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
            : new Rehearsal(Stage(null)).Of(plan, Standing(plan.Way), seed, double.MaxValue);
    }

    /// <summary>By the whole name, or by part of it.</summary>
    private IReadOnlyList<Plan> Asked(string? wanted)
    {
        var all = Possible.Where(p => wanted is null || Name(p with { Then = null }).Contains(wanted, StringComparison.OrdinalIgnoreCase)).ToList();
        return Possible.Where(p => string.Equals(Name(p), wanted, StringComparison.OrdinalIgnoreCase)).ToList() is [var only] ? [only] : all;
    }

    /// <summary>No plan is expected to cost less than to leave things as they are. Who names a plan has decided for himself.</summary>
    public bool IsNotWorthIt(IReadOnlyList<Rehearsed> ranked, string? wanted) =>
        wanted is null && ranked is [var best, ..] && best.Loss >= new Rehearsal(Stage(wanted)).Stopping(Standing(best.Plan.Way));

    /// <summary>Names of the plans that can be followed here.</summary>
    public IEnumerable<string> Names => Possible.Select(Name);

    private IEnumerable<Plan> Possible => Plan.All(book, Kit is not null, crew).Where(p => Common >= 0 || !p.Way.NeedsCommon);

    public NextTouches? Next(Plan plan) => Choice.Of(plan, Standing(plan.Way));

    private Stage Stage(string? wanted) => new(book, Kit, GivesUp: wanted is null);

    private Standing Standing(NamingWay way) => new(belief.Table, shares, Common, Ready(way), Spent(), Tried(way), IsChecked(way), crew);

    public static string Name(Plan plan) => plan.Then is { } then ? $"{Name(plan with { Then = null })}, then {then.Way.Name}" : plan.Routine switch
    {
        Routine.ByHalves => $"{plan.Way.Name}, half of the wires at a time",
        Routine.TouchByTouch => $"{plan.Way.Name}, touch by touch",
        Routine.OneTrip => $"{plan.Way.Name}, all in one trip",
        _ => $"{plan.Way.Name}, one wire at a time",
    };

    public NamingRound Write(NextTouches next)
    {
        var (way, put) = (next.Plan.Way, bundle.Wires.Where((_, w) => next.Put[w]).ToList());
        var ends = next.Touch.Select(e => bundle.Ends[e].Ends[0]).ToList();
        List<ResistorFit> fit = way.Shows == NamingSign.Ohms ? [.. Fitted().Where(f => !IsFitted(f.End)).Select(f => Fit(bundle.Ends[f.End].Ends[0], f.Ohms))] : [];
        return new NamingRound(
            way.Name,
            next.Plan.Routine == Routine.OneTrip && put.Count > 1 ? $"{way.Say}, all of these joined together; over range means that {bundle.Ends[Common].Ends[0].Name} is not the common" : way.Say,
            [.. put.Select(w => w.Id)],
            Said(put),
            [.. ends.Select(e => e.Id)],
            [.. ends.Select(e => e.Name)],
            next.Plan.Routine == Routine.OneByOne && way.Shows == NamingSign.Answers,
            way.NeedsCommon && Common >= 0 ? bundle.Ends[Common].Ends[0].Id : null,
            way.NeedsCommon && Common >= 0 ? bundle.Ends[Common].Ends[0].Name : null,
            fit,
            Standing(way).Minutes(next),
            next.Bits,
            way.Caution);
    }

    private static ResistorFit Fit(ConductorEnd end, double ohms) => new(end.Id, end.Name, Say.Figure(ohms, Dimension.Resistance), ohms);

    /// <summary>"common, stations 1 to 4 and 9".</summary>
    public static string Said(IReadOnlyList<Wire> wires)
    {
        var stations = wires.Where(w => w.Role == WireRole.Station).ToList();
        var (runs, others) = (NumberRuns.Say(stations.Select(w => w.Short)), wires.Where(w => w.Role != WireRole.Station).Select(w => w.Name));
        return string.Join(", ", stations.Count == 0 ? others : others.Append($"station{(stations.Count == 1 ? string.Empty : "s")} {runs}"));
    }

    /// <summary>Ends that this way made ready before are ready.</summary>
    private bool[] Ready(NamingWay way)
    {
        var before = touches.Where(t => t.Touching.Way == way).SelectMany(t => t.Touching.Touched).ToHashSet();
        return [.. Enumerable.Range(0, bundle.Ends.Count).Select(e => way.Shows == NamingSign.Ohms ? IsFitted(e) : before.Contains(e))];
    }

    /// <summary>The most that a way needed to get each end ready that was touched by it.</summary>
    private double[] Spent()
    {
        var spent = new double[bundle.Ends.Count];
        foreach (var (touching, end) in touches.SelectMany(t => t.Touching.Touched.Select(e => (t.Touching, e))))
        {
            spent[end] = Math.Max(spent[end], touching.Way.ReadyMinutes);
        }

        return spent;
    }

    /// <summary>Wires that were read or heard alone this way, against this lead; an answer of yes or no is asked for again where it is worth it.</summary>
    private bool[] Tried(NamingWay way)
    {
        var lead = way.NeedsCommon ? Common : NamingTable.NoLead;
        var before = touches.Where(t => t.Touching.Way == way && t.Touching.Lead == lead && way.Shows != NamingSign.Answers && !t.Touching.IsCheck).Select(t => Array.IndexOf(t.Touching.Put, true)).ToHashSet();
        return [.. Enumerable.Range(0, bundle.Wires.Count).Select(before.Contains)];
    }

    private bool IsChecked(NamingWay way) => touches.Any(t => t.Touching.IsCheck && t.Touching.Way == way && t.Touching.Lead == Common);

    /// <summary>Each end but the common with its resistor.</summary>
    public IEnumerable<(int End, double Ohms)> Fitted() => Kit is null ? [] : Enumerable.Range(0, bundle.Ends.Count).Where(e => e != Common).Select(e => (e, Kit.Ohms[e]));

    private bool IsFitted(int row) => matter.History.Facts.Resistors.LastOrDefault(r => bundle.RowOf(matter.View.Identity.Of(r.Fact.End)) == row) is { Fact.Ohms: not null };
}
