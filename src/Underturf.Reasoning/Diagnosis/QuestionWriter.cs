using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Reasoning.Diagnosis;

/// <summary>Puts a subject into words: the symptom, the explanations with their places and evidence, and how many valves.</summary>
internal sealed class QuestionWriter(Case owner)
{
    public OpenQuestion Write(Subject subject, IReadOnlyList<Move> moves, bool settled)
    {
        var evidence = owner.Evidence.Where(e => e.Stations.Any(subject.Stations.Contains)).ToList();
        var groups = subject.Worlds.GroupBy(Label).Select(g => new WorldGroup([.. g])).OrderByDescending(g => g.Probability).ToList();
        var table = new EvidenceTable(owner, subject, groups);
        var shown = groups.Where(g => g.Probability >= owner.Book.Questions.ShowAbove).ToList();
        var explanations = shown.Select(g => Explain(g, subject, table.Lines(g, evidence))).ToList();
        explanations.AddRange(LookAlikes(subject, shown));
        var rest = 1 - explanations.Sum(e => e.Probability);
        if (rest > 1e-6)
        {
            explanations.Add(new Explanation("other", rest, "anything else of the practice book", [], [], string.Empty));
        }

        return new OpenQuestion(
            subject.Id,
            Symptom(subject, evidence),
            [.. subject.Stations.Select(owner.View.StationNumber)],
            explanations,
            Valves(subject),
            moves,
            settled);
    }

    /// <summary>A reading of a kind that no model explains: an honest question without a computed answer.</summary>
    public OpenQuestion Unexplained(Observed<ReadingFact> reading)
    {
        var kept = owner.Book.UnmodelledProbes.FirstOrDefault(p => p.Name == reading.Fact.How);
        var say = kept?.Say ?? owner.Book.Probe(reading.Fact.How)!.Say;
        var why = kept is not null
            ? $"not modelled yet: {kept.Name} is kept and shown, but no model here explains it"
            : $"not modelled yet: {owner.Supplies.Expected(reading)} expected of a supply in order; mains, fuse and transformer come first";
        var place = reading.Fact.Place is { } p ? $" at {owner.View.Name(p)}" : string.Empty;
        var seen = reading.Fact.Value.Value?.Text ?? "over range";
        var note = reading.Fact.Note is { } text ? $" ({text})" : string.Empty;
        return new OpenQuestion(
            $"reading-{reading.Entry}",
            $"{say}{place}: {seen}{note}",
            [],
            [new Explanation("not-modelled-yet", 1, why, [], [], string.Empty) { Doubt = true }],
            [],
            [],
            false);
    }

    private static string Label(World world) => world.IsSound ? "as-built" : string.Join(" + ", world.Suspects.Select(s => s.Fault!.Id).Order(StringComparer.Ordinal));

    private Explanation Explain(WorldGroup group, Subject subject, IReadOnlyList<EvidenceLine> lines)
    {
        var places = group.Worlds
            .Select(w => (Seat: PlaceOf(w, subject), w.Probability))
            .Where(w => w.Seat.Place is not null)
            .GroupBy(w => w.Seat)
            .Select(g => new PlaceProbability(g.Key.Place!, g.Sum(w => w.Probability) / group.Probability, g.Key.From))
            .OrderByDescending(p => p.Probability)
            .ThenBy(p => p.Place, NaturalOrder.Instance)
            .ToList();
        var top = group.Worlds[0];
        var repair = top.IsSound
            ? subject.Shortfall ? owner.Book.Repair(owner.Book.AsBuilt.WeakRepair)!.Say : string.Empty
            : string.Join(", ", top.Suspects.Select(s => s.Fault!.Repair).Where(r => r.Length > 0).Distinct().Select(r => owner.Book.Repair(r)!.Say));
        return new Explanation(Label(top), group.Probability, Summary(top, subject, places), places, lines, repair)
        {
            Doubt = !top.IsSound && top.Suspects.All(s => s.Fault!.Scope is FaultScope.Note or FaultScope.Unmodelled),
        };
    }

    /// <summary>For a station that waters more than its own place: what else could do that and was ruled out, named all the same.</summary>
    private IEnumerable<Explanation> LookAlikes(Subject subject, List<WorldGroup> shown) => subject.Worlds[0].Suspects.Any(s => s.Fault!.ExtraPlaces)
        ? owner.Book.Faults
            .Where(f => f.ExtraPlaces && !shown.Any(g => g.Worlds[0].Suspects.Any(s => s.Fault == f)))
            .Select(f => new Explanation(f.Id, subject.Worlds.Where(w => w.Suspects.Any(s => s.Fault == f)).Sum(w => w.Probability), f.Say, [], [], owner.Book.Repair(f.Repair)?.Say ?? string.Empty))
        : [];

    /// <summary>Its place; for a broken conductor also where the run to that place begins.</summary>
    private (string? Place, string? From) PlaceOf(World world, Subject subject)
    {
        if (world.Suspects.FirstOrDefault(s => s.Place is not null) is not { } suspect)
        {
            return (null, null);
        }

        var leg = suspect.Fault!.Scope is FaultScope.Conductor or FaultScope.CommonConductor
            ? owner.Paths[suspect.Station ?? subject.Stations[0]].Legs.FirstOrDefault(l => new LegKey(l.Id, l.To) == suspect.Leg)
            : null;
        return (owner.View.Name(suspect.Place!), leg is null ? null : owner.View.Name(leg.From));
    }

    private string Summary(World world, Subject subject, List<PlaceProbability> places)
    {
        if (world.IsSound)
        {
            var run = owner.Evidence.OfType<RunEvidence>().LastOrDefault(e => subject.Stations.Contains(e.Stations[0]));
            return subject.Shortfall && run is not null ? $"{owner.Book.AsBuilt.Say}; {run.VoltsAtCoil(subject.Outlook)} reach the coil, it pulls in at about {owner.Book.Coil.PullInVolts:0.#} V" : owner.Book.AsBuilt.Say;
        }

        var what = string.Join("; ", world.Suspects.Select(s => s.Fault!.Say + Partner(s, subject)));
        return what + Where(places);
    }

    /// <summary>One place where it is clear or clearly likelier than the next; else how many there are.</summary>
    private static string Where(List<PlaceProbability> places) => places switch
    {
        [] => string.Empty,
        [var only] => $", {At(only)}",
        [var first, ..] when first.Probability > 0.9 => $", {At(first)}",
        [var first, var second, ..] when first.Probability > MuchLikelier * second.Probability => $", most likely {At(first)}",
        [var first, var second] => $", {At(first)} or {At(second)}",
        _ => $", at one of {places.Count} places",
    };

    private static string At(PlaceProbability place) => place.From is null ? $"at {place.Place}" : place.Label;

    private const double MuchLikelier = 1.25;

    /// <summary>The other station of a pair, where the question is not about both; the note that may be wrong.</summary>
    private string Partner(Suspect suspect, Subject subject) => suspect.Common is { } common ? $" (common {common})"
        : suspect.Note is { } note ? $" ({note})"
        : !suspect.IsPair ? string.Empty
        : string.Concat(new[] { suspect.Station!, suspect.Other! }.Except(subject.Stations).Select(s => $", with {owner.View.Name(s)}"));

    private string Symptom(Subject subject, IReadOnlyList<Evidence> evidence)
    {
        var names = subject.Stations.Count == 1
            ? owner.View.Name(subject.Stations[0])
            : $"stations {string.Join(", ", subject.Stations.Select(owner.View.StationNumber))} together";
        var odd = evidence
            .Where(e => IsOdd(e, subject))
            .GroupBy(e => e.What.Split(',')[0])
            .Select(g => Said([.. g], subject.Outlook))
            .ToList();
        return odd.Count == 0 ? $"{names}: asked" : $"{names}: {string.Join("; ", odd)}";
    }

    /// <summary>Notes taken in one way, in one breath: "station ohms over range (7 times), 33.3 ± 1.1 ohm expected".</summary>
    private string Said(IReadOnlyList<Evidence> same, Outlook outlook)
    {
        var seen = same.Select(e => e.Observed).Distinct().ToList();
        var observed = seen.Count == 1 ? seen[0] + (same.Count > 1 ? $" ({same.Count} times)" : string.Empty) : $"{seen[0]} to {seen[^1]}";
        return same[0] is RunEvidence ? $"run: {string.Join("; ", seen)}"
            : same[0] is LookEvidence ? $"{same[0].What}: {string.Join("; ", seen)}"
            : $"{same[0].What.Split(',')[0]} {observed}, {same[0].Predicted([], outlook, owner.Cures)} expected";
    }

    /// <summary>It shows by itself that something is wrong, or is much likelier in the leading unsound world than if all were sound.</summary>
    private bool IsOdd(Evidence evidence, Subject subject)
    {
        if (evidence is LookEvidence look)
        {
            return look.ShowsFault;
        }

        var leading = subject.Worlds.FirstOrDefault(w => !w.IsSound);
        return (evidence is RunEvidence run && (run.Behaved is { } b && b != Behaviour.Opens || run.Places > 1 || run.AtOwnPlace == false))
            || (leading is not null && evidence.LogChance(leading.Suspects, subject.Outlook, owner.Cures) - evidence.LogChance([], subject.Outlook, owner.Cures) > 2);
    }

    private List<CountProbability> Valves(Subject subject)
    {
        if (subject.Stations.Count != 1 || subject.Worlds.Where(w => w.Suspects.Any(s => s.MoreCoils > 0)).Sum(w => w.Probability) < owner.Book.Questions.ShowAbove)
        {
            return [];
        }

        var usual = owner.Paths[subject.Stations[0]].Valves.Count;
        return [.. subject.Worlds
            .GroupBy(w => usual + w.Suspects.Sum(s => s.MoreCoils + (s.Fault!.Joins ? 1 : 0)))
            .Select(g => new CountProbability(g.Key, g.Sum(w => w.Probability)))
            .OrderBy(c => c.Count)];
    }
}

/// <summary>Worlds that a technician would call one explanation, most probable first.</summary>
internal sealed record WorldGroup(IReadOnlyList<World> Worlds)
{
    public double Probability { get; } = Worlds.Sum(w => w.Probability);
}
