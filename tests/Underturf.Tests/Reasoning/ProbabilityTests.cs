using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Simulation;

namespace Underturf.Tests.Reasoning;

/// <summary>What holds of probabilities whatever the log.</summary>
public sealed class ProbabilityTests
{
    /// <summary>A question leaves a rest out of its list where it is below one in a million; twice that leaves room for rounding.</summary>
    private const double Unlisted = 2e-6;

    [Fact]
    public void Probabilities_sum_to_one_in_every_question()
    {
        for (var seed = 1001UL; seed <= 1012; seed++)
        {
            foreach (var question in Notebook.Open(WorldGenerator.Make(seed, PracticeBook.Default).Log, PracticeBook.Default).Answer().Questions)
            {
                SumsToOne(question);
            }
        }
    }

    /// <summary>Each fault leads somewhere on this small log, so that taking it out must move something.</summary>
    [Fact]
    public void Taking_any_fault_out_of_the_book_sends_its_probability_elsewhere()
    {
        var site = Site.Line()
            .Sweep(60, (1, "over range"), (2, "12.1 ohm"), (3, "18.6 ohm"), (4, "95.0 ohm"))
            .Run(3, "opens", "lawn 3", "the pond").Run(5, "opens", "lawn 6").Run(6, "stays shut")
            .Read("earth ohms", "22 kohm", "s5").Read("meter flow", "2 gpm");
        // Every question counts as settled, so that no move has to be planned.
        var book = PracticeBook.Default with { Loss = PracticeBook.Default.Loss with { SettledRegretMinutes = 1e9 } };
        foreach (var fault in book.Faults)
        {
            var thinned = book with { Faults = [.. book.Faults.Where(f => f != fault)] };
            var answers = site.Answer(thinned);
            Assert.NotEmpty(answers.Questions);
            foreach (var question in answers.Questions)
            {
                SumsToOne(question);
                Assert.Equal(0, question.Share(fault.Id));
            }
        }
    }

    private static void SumsToOne(OpenQuestion question)
    {
        Assert.InRange(question.Explanations.Sum(e => e.Probability), 1 - Unlisted, 1 + 1e-9);
        Assert.All(question.Explanations, e => Assert.InRange(e.Probability, 0, 1 + 1e-9));
        Assert.All(question.Explanations.Where(e => e.Places.Count > 0), e => Assert.InRange(e.Places.Sum(p => p.Probability), 0, 1 + 1e-6));
        if (question.Valves.Count > 0)
        {
            Assert.Equal(1, question.Valves.Sum(v => v.Probability), 6);
        }
    }
}
