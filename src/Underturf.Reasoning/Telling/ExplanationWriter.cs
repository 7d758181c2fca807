using Underturf.Property.Practice;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Telling;

/// <summary>
/// Tells what would explain a subject: worlds that a technician would call one explanation are one, those that no move tells apart are told as one,
/// the rest is summed up.
/// </summary>
internal sealed class ExplanationWriter(Case owner, Subject subject)
{
    /// <summary>A rest below this is rounding.</summary>
    private const double Rounding = 1e-6;

    /// <summary>Explanations that are not shown may still be what a move would bring to light.</summary>
    private const int MostForeseen = 6;

    private readonly PlaceWriter places = new(owner, subject);

    public (IReadOnlyList<Explanation> Explanations, Overturn? Overturn) Write(IReadOnlyList<Evidence> evidence)
    {
        var groups = subject.Worlds.GroupBy(Label).Select(g => new WorldGroup([.. g])).OrderByDescending(g => g.Probability).ToList();
        var shown = groups.Where((g, i) => i == 0 || g.Probability >= owner.Book.Questions.ShowAbove).ToList();
        var sample = new Sample([.. groups.Take(Math.Max(shown.Count, MostForeseen))]);
        var moves = new Foresights(owner, subject, sample).Find();
        var alike = Alike.Group(sample, moves, shown.Count).OrderByDescending(a => a.Sum(g => shown[g].Probability)).ToList();
        var told = alike.Select(a => new WorldGroup([.. a.SelectMany(g => shown[g].Worlds)])).ToList();
        var table = new EvidenceTable(owner, subject, [.. told, .. groups.Except(shown)]);
        var explanations = told.Select((t, i) => Tell(t, [.. alike[i].Select(g => shown[g])], table.Lines(t, evidence))).ToList();
        IReadOnlyList<IReadOnlyList<int>> foreseen = [.. alike, .. Enumerable.Range(shown.Count, sample.Groups.Count - shown.Count).Select(g => (IReadOnlyList<int>)[g])];
        var overturn = new OverturnFinder(sample, foreseen, moves).Find(i => i < told.Count ? explanations[i].Summary : Summary(groups[foreseen[i][0]]), explanations[0].Doubt);
        explanations.AddRange(LookAlikes(shown));
        var rest = 1 - explanations.Sum(e => e.Probability);
        if (rest > Rounding)
        {
            explanations.Add(new Explanation("other", rest, "anything else of the practice book", [], [], string.Empty));
        }

        return (explanations, overturn);
    }

    private static string Label(World world) => world.IsSound ? "as-built" : string.Join(" + ", world.Suspects.Select(s => s.Fault.Id).Order(StringComparer.Ordinal));

    /// <param name="all">Their worlds together.</param>
    /// <param name="parts">The explanations told as one, the likeliest first.</param>
    private Explanation Tell(WorldGroup all, IReadOnlyList<WorldGroup> parts, IReadOnlyList<EvidenceLine> lines)
    {
        var each = parts.Select(p => new AlikeExplanation(Label(p.Worlds[0]), p.Probability, Summary(p), RepairOf(p.Worlds[0]))).ToList();
        var summary = each.Count == 1 ? each[0].Summary : $"{string.Join(", or ", each.Select(e => e.Summary))}: nothing that you can read or see tells them apart";
        return new Explanation(each[0].Fault, all.Probability, summary, places.Places(all.Worlds), lines, string.Join(", or ", each.Select(e => e.Repair).Where(r => r.Length > 0).Distinct()))
        {
            Doubt = parts.All(p => IsDoubt(p.Worlds[0])),
            Alike = each.Count == 1 ? [] : each,
        };
    }

    private string Summary(WorldGroup group) => places.Summary(group.Worlds[0], places.Places(group.Worlds));

    private string RepairOf(World world) => world.AsksNothing
        ? subject.IsWeak ? owner.Book.Repair(owner.Book.AsBuilt.WeakRepair)!.Say : string.Empty
        : string.Join(", ", world.Suspects.Select(s => s.Fault.Repair).Where(r => r.Length > 0).Distinct().Select(r => owner.Book.Repair(r)!.Say));

    private static bool IsDoubt(World world) => !world.IsSound && world.Suspects.All(s => s.Fault.Scope is FaultScope.Note or FaultScope.Unmodelled);

    /// <summary>For a station that waters more than its own place: what else could do that and was ruled out, named all the same.</summary>
    private IEnumerable<Explanation> LookAlikes(List<WorldGroup> shown) => subject.Worlds[0].Suspects.Any(s => s.Fault.ExtraPlaces)
        ? owner.Book.Faults
            .Where(f => f.ExtraPlaces && !shown.Any(g => g.Worlds[0].Suspects.Any(s => s.Fault == f)))
            .Select(f => new Explanation(f.Id, subject.Worlds.Where(w => w.Suspects.Any(s => s.Fault == f)).Sum(w => w.Probability), f.Say, [], [], owner.Book.Repair(f.Repair)?.Say ?? string.Empty))
        : [];
}
