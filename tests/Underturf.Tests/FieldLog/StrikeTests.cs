using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.FieldLog;

public sealed class StrikeTests
{
    private readonly Notebook ann = new("writer-a");
    private readonly Notebook ben = new("writer-b", startMilliseconds: 1_932_909_121_500);
    private readonly Entry wrong;

    public StrikeTests() => wrong = ann.Note(Say.Told("wrong"));

    [Fact]
    public void A_struck_entry_does_not_count_and_stays_in_the_log()
    {
        var log = Notebook.Read(wrong, ann.Note(Say.Told("right")), ann.Note(Say.Strike(wrong)));
        Assert.Empty(log.Problems);
        Assert.Equal(3, log.Entries.Count);
        Assert.Equal(["right"], log.Standing.Texts());
        Assert.Single(log.Standing);
    }

    [Fact]
    public void The_last_word_counts()
    {
        Entry[] words = [wrong, ann.Note(Say.Strike(wrong)), ann.Note(Say.Restore(wrong)), ann.Note(Say.Strike(wrong)), ann.Note(Say.Restore(wrong))];
        Assert.Equal([1, 0, 1, 0, 1], Enumerable.Range(1, 5).Select(n => Notebook.Read(words[..n]).Standing.Count));
        Assert.Empty(Notebook.Read(words).Problems);
    }

    [Fact]
    public void Two_people_may_strike_the_same_entry() =>
        Assert.Empty(Notebook.Read(wrong, ann.Note(Say.Strike(wrong)), ben.Note(Say.Strike(wrong))).Problems);

    [Fact]
    public void A_strike_of_what_is_not_there_has_no_effect()
    {
        var log = Notebook.Read(wrong, ann.Note(new StrikeFact { Entry = "writer-q/9" }));
        log.OnlyProblem().Is(Severity.Error, "writer-a/2", "writer-q/9, which is not in this log", "Merge the log that has it");
        Assert.Equal(["wrong"], log.Standing.Texts());
    }

    [Fact]
    public void A_strike_noted_before_its_target_has_no_effect()
    {
        var later = ben.NoteLater(Say.Told("later"), 60_000);
        var log = Notebook.Read(wrong, ann.Note(Say.Strike(later)), later);
        log.OnlyProblem().Is(Severity.Error, "writer-a/2", "writer-b/1, which was noted later", "a new entry");
        Assert.Equal(["wrong", "later"], log.Standing.Texts());
    }

    [Fact]
    public void A_strike_of_a_strike_is_refused_and_says_what_to_restore()
    {
        var strike = ann.Note(Say.Strike(wrong));
        var log = Notebook.Read(wrong, strike, ann.Note(Say.Strike(strike)));
        log.OnlyProblem().Is(Severity.Error, "writer-a/3", "itself a strike or restore", "writer-a/1 itself");
        Assert.Empty(log.Standing);
    }

    [Fact]
    public void A_restore_of_what_was_never_struck_is_noticed()
    {
        var log = Notebook.Read(wrong, ann.Note(Say.Restore(wrong)));
        log.OnlyProblem().Is(Severity.Notice, "writer-a/2", "was not struck", "Nothing needs doing");
        Assert.Equal(["wrong"], log.Standing.Texts());
    }

    [Fact]
    public void A_strike_of_a_forked_name_strikes_both_sides()
    {
        var copy = ann.Copy();
        var (left, right) = (ann.Note(Say.Told("left")), copy.NoteLater(Say.Told("right"), 10));
        var log = Notebook.Read(wrong, left, right, ben.NoteLater(Say.Strike(left), 5000));
        Assert.Equal(["wrong"], log.Standing.Texts());
    }

    [Fact]
    public void The_order_in_the_file_does_not_matter()
    {
        Entry[] pages = [wrong, ann.Note(Say.Strike(wrong)), ann.Note(Say.Restore(wrong)), ben.Note(Say.Told("right"))];
        Assert.Equal(Notebook.Read(pages).Standing, Notebook.Read(pages.Reverse()).Standing, (a, b) => a!.Line.Span.SequenceEqual(b!.Line.Span));
    }
}
