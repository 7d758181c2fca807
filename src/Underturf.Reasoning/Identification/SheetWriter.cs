using Underturf.Quantities;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Identification;

/// <summary>Writes a plan down beforehand, so that it works on paper: what carries it in each round, and how the answers are read off.</summary>
internal sealed class SheetWriter(Bundle bundle, NamingBelief belief, PlanDesk desk)
{
    /// <summary>A wire less likely than this at the place is not written down.</summary>
    private const double Unlikely = 0.02;

    public NamingSheet Write(NextTouches next) => next.Plan.Routine switch
    {
        Routine.ByHalves => ByHalves(next),
        Routine.OneTrip => OneTrip(next),
        _ => Sheet(next.Plan, [.. Open().Select(w => Round([w]))], [], []),
    };

    /// <summary>Wires that may be one of the ends without a name: the likeliest first, those that are about as likely in their own order.</summary>
    private List<int> Open() =>
        [.. Enumerable.Range(0, bundle.Wires.Count).Where(w => Mass(w) > Unlikely && !IsNamed(w)).OrderByDescending(w => Math.Round(Mass(w), 1))];

    private double Mass(int wire) => Enumerable.Range(0, bundle.Ends.Count).Sum(e => belief.Shares[e, wire]);

    private bool IsNamed(int wire) => Enumerable.Range(0, bundle.Ends.Count).Any(e => belief.Shares[e, wire] > 1 - Unlikely);

    /// <summary>Every wire gets a pattern of its own: each round puts it on about half of those whose patterns are still alike. An end that never answers is none of them.</summary>
    private NamingSheet ByHalves(NextTouches next)
    {
        var open = Enumerable.Range(0, bundle.Wires.Count).Where(w => next.Put[w] || ((next.Plan.Way.FitsCommon || !belief.Table.IsCommon(w)) && Mass(w) > Unlikely && !IsNamed(w))).OrderByDescending(Mass).ToList();
        var patterns = open.ToDictionary(w => w, _ => string.Empty);
        var rounds = new List<SheetRound>();
        var put = open.Where(w => next.Put[w]).ToHashSet();
        while (put.Count > 0)
        {
            rounds.Add(Round(put.Order()));
            open.ForEach(w => patterns[w] += put.Contains(w) ? "+" : "-");
            put = open.GroupBy(w => patterns[w]).SelectMany(Half).ToHashSet();
        }

        return Sheet(next.Plan, rounds, [.. open.Order().Select(w => new SheetKey(bundle.Wires[w].Name, patterns[w]))], []);
    }

    /// <summary>Half of the wires with one pattern, by how likely they are here; those that were never put on share theirs with ends that are none of them.</summary>
    private IEnumerable<int> Half(IGrouping<string, int> alike)
    {
        var never = !alike.Key.Contains('+', StringComparison.Ordinal);
        if (alike.Count() == 1 && !never)
        {
            return [];
        }

        var (half, taken) = (alike.Sum(Mass) / 2, 0.0);
        return never && alike.Count() == 1 ? alike : alike.TakeWhile(w => (taken += Mass(w)) <= half || taken == Mass(w)).ToList();
    }

    /// <summary>All wires together first, where the next round is that; then one after the other.</summary>
    private NamingSheet OneTrip(NextTouches next)
    {
        var fitted = desk.Fitted().Select(f => new SheetKey(bundle.Ends[f.End].Ends[0].Name, Say.Figure(f.Ohms, Dimension.Resistance)));
        var keys = desk.Fitted().Select(f => new SheetKey(bundle.Ends[f.End].Ends[0].Name, Say.Figure(f.Ohms + (2 * desk.Kit!.WireOhms), Dimension.Resistance)));
        IEnumerable<int> put = Enumerable.Range(0, next.Put.Length).Where(w => next.Put[w]);
        var alone = Open().Where(w => !belief.Table.IsCommon(w)).Select(w => Round([w]));
        return Sheet(next.Plan, [.. put.Count() > 1 ? alone.Prepend(new SheetRound($"all together: {Round(put).On}")) : alone], [.. keys], [.. fitted]);
    }

    private SheetRound Round(IEnumerable<int> wires) => new(PlanDesk.Said([.. wires.Select(w => bundle.Wires[w])]));

    private static NamingSheet Sheet(Plan plan, IReadOnlyList<SheetRound> rounds, IReadOnlyList<SheetKey> keys, IReadOnlyList<SheetKey> fitted) =>
        new(PlanDesk.Name(plan), plan.Way.Say, plan.Way.Caution, rounds, keys, fitted);
}
