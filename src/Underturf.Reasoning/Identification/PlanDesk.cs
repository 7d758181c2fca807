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

    /// <summary>The end that is the common well enough to clip a lead to it; -1 where none is.</summary>
    public int Common { get; } = Enumerable.Range(0, bundle.Ends.Count).FirstOrDefault(e => belief.Best(e) is var best && best.Share >= matter.Book.Naming.CommonAt && belief.Table.IsCommon(best.Wire), -1);

    /// <summary>Cheapest first. What takes three times the cheapest so far is not played to its end; a plan that stands alone is not played at all.</summary>
    public IReadOnlyList<Rehearsed> Rank(ulong seed, string? wanted)
    {
        var asked = Possible.Where(p => wanted is null || Name(p).Contains(wanted, StringComparison.OrdinalIgnoreCase)).OrderByDescending(p => p.Routine).ToList();
        if (asked is [var only])
        {
            return [new Rehearsed(only, 0, 0, 0, 0)];
        }

        var (rehearsal, ranked, best) = (new Rehearsal(new Stage(book, Kit)), new List<Rehearsed>(), double.MaxValue);
        foreach (var plan in asked)
        {
            ranked.Add(rehearsal.Of(plan, Standing(plan.Way), seed, 3 * best));
            best = Math.Min(best, ranked[^1].Loss);
        }

        return [.. ranked.OrderBy(r => r.Loss)];
    }

    /// <summary>Names of the plans that can be followed here.</summary>
    public IEnumerable<string> Names => Possible.Select(Name);

    private IEnumerable<Plan> Possible => Plan.All(book, Common >= 0, crew).Where(p => p.Routine != Routine.OneTrip || Kit is not null);

    public NextTouches? Next(Plan plan) => Choice.Of(plan, Standing(plan.Way));

    private Standing Standing(NamingWay way) => new(belief.Table, shares, Common, Ready(way), Tried(way), crew);

    public static string Name(Plan plan) => plan.Routine switch
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
            way.Say,
            [.. put.Select(w => w.Id)],
            Said(put),
            [.. ends.Select(e => e.Id)],
            [.. ends.Select(e => e.Name)],
            next.Plan.Routine == Routine.OneByOne && way.Shows == NamingSign.Answers,
            way.NeedsCommon && Common >= 0 ? bundle.Ends[Common].Ends[0].Id : null,
            way.NeedsCommon && Common >= 0 ? bundle.Ends[Common].Ends[0].Name : null,
            fit,
            fit.Count == 0 && way.Shows == NamingSign.Ohms ? way.PutMinutes + way.WireMinutes : Standing(way).Minutes(next),
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

    /// <summary>Wires that were read or heard alone this way; an answer of yes or no is asked for again where it is worth it.</summary>
    private bool[] Tried(NamingWay way)
    {
        var before = touches.Where(t => t.Touching.Way == way && way.Shows != NamingSign.Answers).Select(t => Array.IndexOf(t.Touching.Put, true)).ToHashSet();
        return [.. Enumerable.Range(0, bundle.Wires.Count).Select(before.Contains)];
    }

    /// <summary>Each end but the common with its resistor.</summary>
    public IEnumerable<(int End, double Ohms)> Fitted() => Kit is null ? [] : Enumerable.Range(0, bundle.Ends.Count).Where(e => e != Common).Select(e => (e, Kit.Ohms[e]));

    private bool IsFitted(int row) => matter.History.Facts.Resistors.LastOrDefault(r => bundle.RowOf(matter.View.Identity.Of(r.Fact.End)) == row) is { Fact.Ohms: not null };
}
