using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Simulation;

public sealed class EquivalenceTests
{
    /// <summary>Probability by which a disturbance of half a percent may move an explanation.</summary>
    private const double FewPoints = 0.1;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void The_demo_renamed_shuffled_and_perturbed_gives_equivalent_answers(int seed)
    {
        var demo = MemorialGarden.Make(PracticeBook.Default).Log;
        var disguise = new Disguise((ulong)seed);
        var before = Notebook.Open(demo, PracticeBook.Default).Answer();
        var other = disguise.Of(demo);
        Assert.Empty(other.Problems);
        var after = Notebook.Open(other, PracticeBook.Default).Answer();

        Assert.Equal(Keys(before, disguise.Label), Keys(after, l => l));
        foreach (var question in before.Questions)
        {
            Equivalent(question, after.Questions.First(q => Key(q, l => l) == Key(question, disguise.Label)), disguise);
        }
    }

    private static void Equivalent(OpenQuestion before, OpenQuestion after, Disguise disguise)
    {
        var (own, other) = (before.Explanations[0], after.Explanations[0]);
        Assert.Equal(own.Fault, other.Fault);
        Assert.Equal(own.Places.Where(p => p.Probability > 0.9).Select(p => disguise.Named(p.Place)), other.Places.Where(p => p.Probability > 0.9).Select(p => p.Place));
        foreach (var explanation in before.Explanations.Where(e => e.Fault != "other"))
        {
            var now = after.Explanations.Where(e => e.Fault == explanation.Fault).Sum(e => e.Probability);
            Assert.True(Math.Abs(explanation.Probability - now) < FewPoints, $"{before.Id}: {explanation.Fault} {explanation.Probability:0.000} and {now:0.000}");
        }
    }

    private static IEnumerable<string> Keys(Answers answers, Func<string, string> label) => answers.Questions.Select(q => Key(q, label)).Order(StringComparer.Ordinal);

    private static string Key(OpenQuestion question, Func<string, string> label) => string.Join(' ', question.Stations.Select(label).Order(StringComparer.Ordinal));
}
