using Underturf.Numerics;
using Underturf.Property.Practice;
using Underturf.Reasoning.Moves;

namespace Underturf.Reasoning.Water;

/// <summary>What runs while nothing should, as an open question.</summary>
internal sealed class LeakQuestion(WaterBelief belief, Walks walks)
{
    public const string Id = "water-idle";

    /// <summary>Places that two sources at once are told with, of each.</summary>
    private const int MostOfEach = 3;

    private readonly WaterSay say = new(belief.Owner.History.Facts.UsesUsUnits);

    private WaterCase Owner => belief.Owner;

    private IEnumerable<WaterReading> Idle => belief.Meter.Where(r => r.IsIdle);

    /// <summary>Nothing where nothing runs, or work has ended what did.</summary>
    public OpenQuestion? Write()
    {
        if (IsClosed())
        {
            return null;
        }

        var explanations = Explanations();
        var moves = new LeakMoves(belief, walks).Find();
        return new OpenQuestion(Id, Symptom(), [], explanations, [], moves.Moves, moves.IsSettled) { WaterLost = Lost() };
    }

    /// <summary>What is lost in a day while it runs: nine times in ten between these.</summary>
    public WaterLoss? Lost() => WaterLossFinder.Of(belief);

    private bool IsClosed()
    {
        var running = 1 - belief.Running[0];
        return (!Idle.Any() && Owner.Watches.All(w => w.Station is not null))
            || (running + belief.Unmodelled < 1 - Owner.Book.Questions.OpenBelow && !(Idle.LastOrDefault() is { Si: > 0 } last && last.Si > last.Sigma && !IsCuredSince(last)));
    }

    private bool IsCuredSince(WaterReading last) => Owner.History.Facts.Works.Any(w => w.Moment > last.Moment && Owner.Water.Faults.Any(f => f.Scope is WaterScope.Valve or WaterScope.Main && f.Repair == w.Fact.Did));

    private string Symptom()
    {
        var readings = Idle.Select(r => r.Text + (r.Shut.Count > 0 ? $" ({string.Join(" and ", r.Shut.Order(StringComparer.Ordinal).Select(Owner.View.Name))} shut)" : string.Empty)).ToList();
        var seen = Owner.Watches.Where(w => w.Station is null).SelectMany(w => w.Seen).Distinct().ToList();
        return "everything off: " + string.Join("; ", new[]
        {
            readings.Count > 0 ? $"the meter shows {string.Join(", ", readings)}" : string.Empty,
            seen.Count > 0 ? $"seen: {string.Join(", ", seen)}" : string.Empty,
        }.Where(t => t.Length > 0));
    }

    private List<Explanation> Explanations()
    {
        var told = belief.Sets
            .GroupBy(s => string.Join(" + ", s.Groups.Select(g => g.Fault.Id).Order(StringComparer.Ordinal)))
            .Select(g => Explain(g.Key, [.. g]))
            .Append(WaterDoubt.Of(belief.Unmodelled))
            .OrderByDescending(e => e.Probability)
            .ToList();
        var shown = told.Where(e => e.Probability >= Owner.Book.Questions.ShowAbove).ToList();
        return [.. shown, .. told.Where(e => !shown.Contains(e)).Take(1).Select(_ => Rest(told, shown))];
    }

    private static Explanation Rest(List<Explanation> told, List<Explanation> shown) =>
        new("other", Math.Max(0, told.Sum(e => e.Probability) - shown.Sum(e => e.Probability)), "anything else of the practice book", [], [], string.Empty);

    private Explanation Explain(string fault, IReadOnlyList<LeakSet> sets)
    {
        var total = sets.Sum(s => s.Probability);
        var faults = sets[0].Groups.Select(g => g.Fault).ToList();
        if (faults.Count == 0)
        {
            var use = Idle.Any(r => r.Si > r.Sigma) ? Owner.Water.Of(WaterScope.Elsewhere).FirstOrDefault() : null;
            return new Explanation(use?.Id ?? "nothing", total, use?.Say ?? "nothing runs", [], Evidence(sets), string.Empty);
        }

        var places = Places(sets, total);
        return new Explanation(
            fault,
            total,
            $"{string.Join(" and ", faults.Select(f => f.Say))}, {Amounts(sets)}{(places is [{ Probability: > 0.9 } sure, ..] ? $": {sure.Label}" : string.Empty)}",
            places,
            Evidence(sets),
            string.Join("; ", faults.Select(f => Owner.Book.Repair(f.Repair)!.Say).Distinct()));
    }

    private string Amounts(IReadOnlyList<LeakSet> sets)
    {
        var likeliest = sets.MaxBy(s => s.Probability)!;
        return string.Join(" and ", likeliest.Amounts.Select(a => say.Flow(a.Mean, a.Spread)));
    }

    /// <summary>Of one source its places; of two the pairs of them.</summary>
    private static List<PlaceProbability> Places(IReadOnlyList<LeakSet> sets, double total)
    {
        var places = new Dictionary<(string Label, string? Id), double>();
        foreach (var set in sets)
        {
            foreach (var (label, id, share) in set.Groups.Count == 1 ? Of(set, 0) : Pairs(set))
            {
                places[(label, id)] = places.GetValueOrDefault((label, id)) + (share * set.Probability / total);
            }
        }

        return [.. places.OrderByDescending(p => p.Value).ThenBy(p => p.Key.Label, StringComparer.Ordinal).Select(p => new PlaceProbability(p.Key.Label, p.Value) { Id = p.Key.Id })];
    }

    private static IEnumerable<(string Label, string? Id, double Share)> Of(LeakSet set, int group) =>
        set.Groups[group].Sources.Select((s, k) => (s.Place, (string?)s.Id, set.Shares[group][k]));

    private static IEnumerable<(string Label, string? Id, double Share)> Pairs(LeakSet set) =>
        from a in Of(set, 0).OrderByDescending(p => p.Share).Take(MostOfEach)
        from b in Of(set, 1).OrderByDescending(p => p.Share).Take(MostOfEach)
        where a.Label != b.Label
        select ($"{a.Label} and {b.Label}", (string?)null, a.Share * b.Share);

    /// <summary>Each reading with everything off, beside what the likeliest of these sets has it show.</summary>
    private List<EvidenceLine> Evidence(IReadOnlyList<LeakSet> sets)
    {
        var set = sets.MaxBy(s => s.Probability)!;
        return [.. belief.Meter.Select((r, k) => (Reading: r, Index: k)).Where(r => r.Reading.IsIdle).Select(r => Line(r.Reading, r.Index, set, sets))];
    }

    private EvidenceLine Line(WaterReading reading, int index, LeakSet set, IReadOnlyList<LeakSet> own)
    {
        var (mean, spread, passes) = Shows(set, index);
        var others = belief.Sets.Except(own).ToList();
        var weight = Math.Log10(Density(reading, set, index)) - Math.Log10(Math.Max(1e-300, others.Sum(s => s.Probability * Density(reading, s, index)) / Math.Max(1e-12, others.Sum(s => s.Probability))));
        var most = say.Flow(mean + passes);
        return new EvidenceLine(reading.Moment.Entry.ToString(), $"{reading.Probe.Name}, everything off", passes > 0 ? (mean > 0 ? $"{say.Flow(mean)} to {most}" : $"up to {most}") : mean == 0 ? "nothing" : say.Flow(mean, spread), reading.Text, weight);
    }

    /// <param name="set">What runs: what comes freely, with its standard deviation, and what a valve that does not hold lets through at most.</param>
    private static (double Mean, double Spread, double Passes) Shows(LeakSet set, int index)
    {
        var amounts = set.Groups.Select((g, k) => (Passage: g.Fed[index], set.Amounts[k].Mean, set.Amounts[k].Spread)).Where(a => a.Passage.Shows).ToLookup(a => a.Passage.Kind == PassageKind.Open);
        return (amounts[true].Sum(a => a.Mean), Math.Sqrt(amounts[true].Sum(a => a.Spread * a.Spread)), amounts[false].Sum(a => a.Mean));
    }

    private static double Density(WaterReading reading, LeakSet set, int index)
    {
        var (mean, spread, passes) = Shows(set, index);
        var sigma = double.Hypot(reading.Sigma, spread);
        return Math.Max(passes > 0
            ? (Normal.Cdf((reading.Si - mean) / sigma) - Normal.Cdf((reading.Si - mean - passes) / sigma)) / passes
            : Math.Exp(Normal.LogDensity((reading.Si - mean) / sigma)) / sigma, 1e-300);
    }
}
