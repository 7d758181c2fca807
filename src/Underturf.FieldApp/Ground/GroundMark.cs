using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>What the thinking says of a place: the next move is there, or a fault can be there.</summary>
/// <param name="Thing">Id of the place; of a run the place at its far end.</param>
/// <param name="Probability">That the fault of the question sits there; nothing for the next move.</param>
/// <param name="Words">Said on the card.</param>
/// <param name="Line">One position, or the two ends of the run.</param>
/// <param name="Question">Id of the question that it belongs to.</param>
public sealed record GroundMark(string Thing, double? Probability, string Words, IReadOnlyList<Position> Line, string Question)
{
    /// <summary>What is less likely is not marked: a map full of rings points nowhere.</summary>
    private const double LeastProbability = 0.05;

    /// <summary>The next move first, then the suspected places, the likeliest first.</summary>
    public static IReadOnlyList<GroundMark> Of(Answers answers, PropertyView view)
    {
        var byName = view.Controllers.Keys.Concat(view.Boxes.Keys).Concat(view.Valves.Keys).ToLookup(view.Name, StringComparer.Ordinal);
        var suspected = answers.Questions.SelectMany(question => Suspected(question, byName, view)).OrderByDescending(mark => mark.Probability);
        return [.. Next(answers, view), .. suspected];
    }

    private static IEnumerable<GroundMark> Next(Answers answers, PropertyView view) =>
        answers.Moves is [var move, ..] && view.PositionOf(move.Place) is { } at
            ? [new GroundMark(view.Identity.Of(move.Place), null, $"{Upper(move.Action)} ({Wording.Minutes(move.Minutes)})", [at], move.Question)]
            : [];

    /// <summary>A question's explanations share what they say of a place: their probabilities of it add up.</summary>
    private static IEnumerable<GroundMark> Suspected(OpenQuestion question, ILookup<string, string> byName, PropertyView view) => question.Explanations
        .Where(explanation => !explanation.Doubt)
        .SelectMany(explanation => explanation.Places.Select(place => (place.Place, place.From, Probability: place.Probability * explanation.Probability)))
        .GroupBy(place => (place.Place, place.From))
        .Select(group => (group.Key.Place, group.Key.From, Probability: group.Sum(place => place.Probability)))
        .Where(place => place.Probability >= LeastProbability)
        .SelectMany(place => byName[place.Place].Select(id => At(question, id, place.From is null ? null : byName[place.From].FirstOrDefault(), place.Probability, view)))
        .OfType<GroundMark>();

    private static GroundMark? At(OpenQuestion question, string id, string? from, double probability, PropertyView view)
    {
        if (view.PositionOf(id) is not { } at)
        {
            return null;
        }

        IReadOnlyList<Position> line = from is not null && view.PositionOf(from) is { } start && start != at ? [start, at] : [at];
        var where = line.Count > 1 ? $", on the run from {view.Name(from!)}" : "";
        return new GroundMark(id, probability, $"{Upper(question.Symptom)}: {Wording.Percent(probability)}{where}", line, question.Id);
    }

    private static string Upper(string words) => words.Length == 0 ? words : string.Concat(words[..1].ToUpperInvariant(), words.AsSpan(1));
}
