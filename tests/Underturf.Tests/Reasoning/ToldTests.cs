using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Reasoning;
using Underturf.Reasoning.Telling;

namespace Underturf.Tests.Reasoning;

/// <summary>How belief is told: what cannot be told apart as one, how strongly a reading speaks, what would change the answer.</summary>
public sealed class ToldTests
{
    /// <summary>An open coil and an open conductor show the same from outside; only the coil read alone, its leads joined, or a look tells them apart.</summary>
    private static PracticeBook Book(bool ohmmeter, bool seen) => PracticeBook.Default with
    {
        Faults = [.. PracticeBook.Default.Faults.Where(f => f.Id is "open-coil" or "open-conductor").Select(f => f with { Seen = seen ? 0.6 : 0 })],
        Instruments = [.. PracticeBook.Default.Instruments.Select(i => i with { Owned = ohmmeter && i.Name == "ohmmeter" })],
    };

    private static OpenQuestion Open(PracticeBook book) => Site.Line().Sweep(60, (1, "over range")).Run(1, "stays shut").Answer(book).About(1);

    [Fact]
    public void Explanations_that_no_owned_instrument_and_no_look_tells_apart_are_one()
    {
        var told = Assert.Single(Open(Book(ohmmeter: false, seen: false)).Explanations, e => e.Fault != "other");
        Assert.Equal(2, told.Alike.Count);
        Assert.Equal(told.Probability, told.Alike.Sum(a => a.Probability), 9);
        Assert.All(told.Alike, a => Assert.Contains(a.Summary, told.Summary, StringComparison.Ordinal));
        Assert.Contains(" or ", told.Repair, StringComparison.Ordinal);
        Assert.True(told.Names("open-coil") && told.Names("open-conductor"));
    }

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void An_instrument_or_an_eye_that_tells_them_apart_keeps_them_two(bool ohmmeter, bool seen)
    {
        var question = Open(Book(ohmmeter, seen));
        Assert.All(question.Explanations, e => Assert.Empty(e.Alike));
        Assert.True(question.Share("open-coil") > 0.05 && question.Share("open-conductor") > 0.05);
    }

    [Fact]
    public void What_is_told_as_one_does_not_change_what_is_believed()
    {
        var (apart, one) = (Open(Book(true, false)), Open(Book(false, false)).Explanations[0]);
        Assert.All(one.Alike, a => Assert.Equal(apart.Share(a.Fault), a.Probability, 6));
    }

    /// <summary>Limits 3, 20 and 150: Kass and Raftery 1995 (from memory).</summary>
    [Theory]
    [InlineData(0, "speaks neither way")]
    [InlineData(2.9, "speaks neither way")]
    [InlineData(3.1, "speaks for")]
    [InlineData(19.9, "speaks for")]
    [InlineData(20.1, "speaks strongly for")]
    [InlineData(151, "speaks very strongly for")]
    [InlineData(1 / 3.1, "speaks against")]
    [InlineData(1 / 20.1, "speaks strongly against")]
    [InlineData(1 / 151.0, "speaks very strongly against")]
    public void The_strength_of_evidence_follows_a_published_scale(double times, string said) =>
        Assert.Equal(said, EvidenceScale.Say(times == 0 ? 0 : Math.Log10(times)));

    [Fact]
    public void What_would_change_the_answer_names_a_move_its_outcome_and_both_shares()
    {
        var question = Open(Book(true, false));
        var (leading, other) = (question.Explanations[0], question.Explanations[1]);
        var overturn = question.Overturn!;
        Assert.True(overturn.Overturns);
        Assert.Equal(other.Summary, overturn.Explanation);
        Assert.Equal(other.Probability, overturn.Before, 6);
        Assert.True(overturn.After > 0.95 && overturn.Chance > 0.05);
        Assert.NotEqual(leading.Summary, overturn.Explanation);
        Assert.Contains(overturn.Outcome, overturn.Say, StringComparison.Ordinal);
    }

    /// <summary>The coil alone shows its ohms where the wire is open, over range where it is open itself: Bayes by hand.</summary>
    [Fact]
    public void What_would_change_the_answer_is_bayes_by_hand()
    {
        var question = Open(Book(true, false));
        var overturn = question.Overturn!;
        var likelihood = overturn.Chance * overturn.After / overturn.Before;
        Assert.InRange(likelihood, 0.9, 1 + 1e-6);
    }

    [Fact]
    public void A_doubted_note_is_overturned_by_the_same_figure_again()
    {
        var question = Site.Line().Sweep(60, (3, "24 ohm")).Answer(Books.AsNoted).About(3);
        Assert.True(question.Explanations[0].Doubt, question.Leading());
        Assert.Contains("once more", question.Overturn!.Action, StringComparison.Ordinal);
        Assert.Equal("the same as before", question.Overturn.Outcome);
    }

    [Fact]
    public void What_is_rarer_than_the_book_shows_is_summed_up()
    {
        foreach (var question in Site.Line().Sweep(60, (1, "over range"), (5, "61 ohm"), (6, "15 ohm")).Answer().Questions)
        {
            var listed = question.Explanations.Where(e => e.Fault != "other" && e.Evidence.Count > 0).ToList();
            Assert.All(listed, e => Assert.True(e.Probability >= PracticeBook.Default.Questions.ShowAbove));
            Assert.Equal(1, question.Explanations.Sum(e => e.Probability), 6);
        }
    }
}
