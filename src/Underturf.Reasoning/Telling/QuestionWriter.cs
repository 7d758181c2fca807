using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Telling;

/// <summary>Puts a subject into words: the symptom, the explanations, what would change them, how many valves, and what has to be taken again first.</summary>
internal sealed class QuestionWriter(Case owner)
{
    private readonly Repeats repeats = new(owner);
    private readonly SymptomWriter symptoms = new(owner);

    /// <summary>Notes that cannot all be right come before everything: nothing is settled, and no explanation is more than a doubt.</summary>
    public OpenQuestion Write(Subject subject, IReadOnlyList<Move> moves, bool settled)
    {
        var evidence = owner.Evidence.Where(e => e.Stations.Any(subject.Stations.Contains)).ToList();
        var again = repeats.Of(subject, evidence);
        var (explanations, overturn) = new ExplanationWriter(owner, subject).Write(evidence);
        return new OpenQuestion(
            subject.Id,
            symptoms.Of(subject, evidence),
            [.. subject.Stations.Select(owner.View.StationNumber)],
            again.Count == 0 ? explanations : [.. explanations.Select(e => e with { Doubt = true })],
            Valves(subject),
            again.Count == 0 ? moves : [.. again.Select(c => repeats.Again(c, subject.Id)), .. moves.Skip(settled ? 1 : 0)],
            settled && again.Count == 0)
        {
            Repeats = [.. again.Select(repeats.Told)],
            Overturn = again.Count == 0 ? overturn : null,
        };
    }

    /// <summary>Notes that cannot all be right, of stations and supplies that nothing else is asked about.</summary>
    public IEnumerable<OpenQuestion> Contradicted(IReadOnlyList<OpenQuestion> questions, IReadOnlyDictionary<string, Belief> beliefs) =>
        repeats.Beside(questions, beliefs).Select(c => Contradicted(c, $"again-{c.Second.Entry}"));

    private OpenQuestion Contradicted(Conflict conflict, string id) => new(
        id,
        $"{conflict.What}: {conflict.Why}",
        [.. conflict.Stations.Select(owner.View.StationNumber)],
        [new Explanation("contradiction", 1, "one of the two notes is wrong; which, the next reading tells", [], [], string.Empty) { Doubt = true }],
        [],
        [repeats.Again(conflict, id)],
        false)
    {
        Repeats = [repeats.Told(conflict)],
    };

    /// <summary>A reading of a kind that no model explains: an honest question without a computed answer.</summary>
    public OpenQuestion Unexplained(Observed<ReadingFact> reading)
    {
        var say = owner.Book.Probe(reading.Fact.How)!.Say;
        var why = $"not modelled yet: {owner.Supplies.Expected(reading)} expected of a supply in order; mains, fuse and transformer come first";
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

    private List<CountProbability> Valves(Subject subject)
    {
        if (subject.Stations.Count != 1 || subject.Worlds.Where(w => w.Suspects.Any(s => s.MoreCoils > 0)).Sum(w => w.Probability) < owner.Book.Questions.ShowAbove)
        {
            return [];
        }

        var usual = owner.Paths[subject.Stations[0]].Valves.Count;
        return [.. subject.Worlds
            .GroupBy(w => usual + w.Suspects.Sum(s => s.MoreCoils + (s.Fault.Joins ? 1 : 0)))
            .Select(g => new CountProbability(g.Key, g.Sum(w => w.Probability)))
            .OrderBy(c => c.Count)];
    }
}
