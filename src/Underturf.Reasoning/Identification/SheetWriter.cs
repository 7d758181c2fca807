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
        _ => Sheet(next.Plan, [.. Open(next.Plan.Turned).Select(one => Round([one], next.Plan.Turned))], [], []),
    };

    /// <summary>Wires that may be one of the ends without a name, or such ends that may be a wire: the likeliest first, those that are about as likely in their own order.</summary>
    private List<int> Open(bool turned) =>
        [.. Enumerable.Range(0, bundle.Count(wires: !turned)).Where(one => Mass(one, turned) > Unlikely && !IsNamed(one, turned)).OrderByDescending(one => Math.Round(Mass(one, turned), 1))];

    private IEnumerable<double> Shares(int one, bool turned) => turned ? Enumerable.Range(0, bundle.Wires.Count).Select(w => belief.Shares[one, w]) : Enumerable.Range(0, bundle.Ends.Count).Select(e => belief.Shares[e, one]);

    private double Mass(int one, bool turned) => Shares(one, turned).Sum();

    private bool IsNamed(int one, bool turned) => Shares(one, turned).Any(share => share > 1 - Unlikely);

    /// <summary>Every wire gets a pattern of its own: each round puts it on about half of those whose patterns are still alike. An end that never answers is none of them.</summary>
    private NamingSheet ByHalves(NextTouches next)
    {
        var (way, turned) = (next.Plan.Way, next.Plan.Turned);
        bool Carries(int one) => turned ? !way.NeedsCommon || one != desk.Common : way.FitsCommon || !belief.Table.IsCommon(one);
        var open = Enumerable.Range(0, bundle.Count(wires: !turned)).Where(one => next.Put[one] || (Carries(one) && Mass(one, turned) > Unlikely && !IsNamed(one, turned))).OrderByDescending(one => Mass(one, turned)).ToList();
        var patterns = open.ToDictionary(w => w, _ => string.Empty);
        var rounds = new List<SheetRound>();
        var put = open.Where(w => next.Put[w]).ToHashSet();
        while (put.Count > 0)
        {
            rounds.Add(Round(put.Order(), turned));
            open.ForEach(w => patterns[w] += put.Contains(w) ? "+" : "-");
            put = open.GroupBy(w => patterns[w]).SelectMany(alike => Half(alike, turned)).ToHashSet();
        }

        return Sheet(next.Plan, rounds, [.. open.Order().Select(w => new SheetKey(bundle.NameOf(w, isWire: !turned), patterns[w]))], []);
    }

    /// <summary>Half of the wires with one pattern, by how likely they are here; those that were never put on share theirs with ends that are none of them.</summary>
    private IEnumerable<int> Half(IGrouping<string, int> alike, bool turned)
    {
        var never = !alike.Key.Contains('+', StringComparison.Ordinal);
        if (alike.Count() == 1 && !never)
        {
            return [];
        }

        var (half, taken) = (alike.Sum(one => Mass(one, turned)) / 2, 0.0);
        return never && alike.Count() == 1 ? alike : alike.TakeWhile(w => (taken += Mass(w, turned)) <= half || taken == Mass(w, turned)).ToList();
    }

    /// <summary>All together first, where the next round is that; then one after the other.</summary>
    private NamingSheet OneTrip(NextTouches next)
    {
        var turned = next.Plan.Turned;
        var fitted = desk.Fitted(turned).Select(f => new SheetKey(bundle.NameOf(f.Of, isWire: turned), Say.Figure(f.Ohms, Dimension.Resistance)));
        var keys = desk.Fitted(turned).Select(f => new SheetKey(bundle.NameOf(f.Of, isWire: turned), Say.Figure(f.Ohms + (2 * desk.Kits.Of(turned)!.WireOhms), Dimension.Resistance)));
        var put = Enumerable.Range(0, next.Put.Length).Where(one => next.Put[one]).ToList();
        var alone = Open(turned).Where(one => turned ? one != desk.Common : !belief.Table.IsCommon(one)).Select(one => Round([one], turned));
        return Sheet(next.Plan, [.. put.Count > 1 ? alone.Prepend(new SheetRound($"all together: {Round(put, turned).On}")) : alone], [.. keys], [.. fitted]);
    }

    private SheetRound Round(IEnumerable<int> put, bool turned) => new(RoundWriter.Said(bundle, put, turned));

    private static NamingSheet Sheet(Plan plan, IReadOnlyList<SheetRound> rounds, IReadOnlyList<SheetKey> keys, IReadOnlyList<SheetKey> fitted) =>
        new(PlanDesk.Name(plan), plan.Way.SayOf(plan.Turned), plan.Way.CautionOf(plan.Turned), rounds, keys, fitted) { FromPlace = plan.Turned };
}
