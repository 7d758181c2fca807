using Underturf.Reasoning.Diagnosis;

namespace Underturf.Papers;

/// <summary>Which places the explanations point to: by the place's name, a line for each open question with the probability that its fault sits there.</summary>
internal static class SuspectPlaces
{
    private const double LeastProbability = 0.05;

    /// <summary>Questions are numbered as in the findings.</summary>
    public static ILookup<string, string> Of(PaperMatter matter) => matter.Answers.Questions
        .SelectMany((question, i) => question.Explanations
            .SelectMany(e => e.Places.Select(p => (p.Place, Probability: p.Probability * e.Probability)))
            .GroupBy(p => p.Place, StringComparer.Ordinal)
            .Select(g => (Place: g.Key, Probability: g.Sum(p => p.Probability)))
            .Where(p => p.Probability >= LeastProbability)
            .Select(p => (p.Place, Line: $"question {i + 1}: {Say.Share(p.Probability)}")))
        .ToLookup(p => p.Place, p => p.Line, StringComparer.Ordinal);
}
