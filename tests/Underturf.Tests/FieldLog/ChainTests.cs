using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.Tests.FieldLog;

public sealed class ChainTests
{
    private readonly Notebook ann = new("writer-a");

    [Fact]
    public void A_whole_chain_has_nothing_to_report() =>
        Assert.Empty(Notebook.Read(ann.Note(Say.Told("1")), ann.Note(Say.Told("2")), ann.Note(Say.Told("3"))).Problems);

    [Fact]
    public void A_gap_names_the_entries_that_are_missing()
    {
        var pages = Enumerable.Range(1, 6).Select(i => ann.Note(Say.Told($"{i}"))).ToList();
        var log = Notebook.Read(pages[0], pages[2], pages[5]);
        Assert.Equal(["1", "3", "6"], log.Standing.Texts());
        log.Problems[0].Is(Severity.Error, "writer-a/2", "is missing", "Merge the copy");
        log.Problems[1].Is(Severity.Error, "writer-a/4", "all up to writer-a/5 are missing", "Merge the copy");
    }

    [Fact]
    public void A_chain_that_does_not_begin_with_1_says_what_is_missing()
    {
        ann.Note(Say.Told("1"));
        Notebook.Read(ann.Note(Say.Told("2"))).OnlyProblem().Is(Severity.Error, "writer-a/1", "is missing", "Merge the copy");
    }

    [Fact]
    public void A_link_that_does_not_fit_is_reported_and_both_entries_count()
    {
        var first = ann.Note(Say.Told("1"));
        const string Body = "{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\"2\"}";
        var second = Notebook.Sealed(Body, Notebook.Head(Body, 2, Notebook.Sha("something else"), "writer-a", "2031-04-02T15:13:00.000Z/0"));
        var log = LogDocument.Read(Notebook.File(Notebook.Text(first), second));
        log.OnlyProblem().Is(Severity.Error, "writer-a/2", "does not follow from writer-a/1", "compare with another copy");
        Assert.Equal(["1", "2"], log.Standing.Texts());
    }

    [Fact]
    public void A_first_entry_that_names_one_before_it_is_reported()
    {
        const string Body = "{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\"1\"}";
        LogDocument.Read(Notebook.File(Notebook.Sealed(Body, Notebook.Head(Body, prev: Notebook.Sha("x"))))).OnlyProblem()
            .Is(Severity.Error, "writer-x/1", "names an entry before it", "compare");
    }

    [Fact]
    public void A_clock_that_ran_back_is_noticed()
    {
        var first = ann.Note(Say.Told("later"));
        const string Body = "{\"kind\":\"told\",\"version\":1,\"who\":\"a\",\"text\":\"earlier\"}";
        var second = Notebook.Sealed(Body, Notebook.Head(Body, 2, first.Header.Hash, "writer-a", "2030-01-01T00:00:00.000Z/0"));
        var log = LogDocument.Read(Notebook.File(Notebook.Text(first), second));
        log.OnlyProblem().Is(Severity.Notice, "writer-a/2", "no later than", "clock");
        Assert.Equal(["earlier", "later"], log.Standing.Texts());
    }

    [Fact]
    public void An_erased_body_leaves_the_chain_whole()
    {
        var (first, second) = (ann.Note(Say.Told("private")), ann.Note(Say.Told("2")));
        var erased = Erasure.Erase(first);
        var log = Notebook.Read(erased, second);
        Assert.Empty(log.Problems);
        Assert.True(log.Entries[0].Erased);
        Assert.Equal(["2"], log.Standing.Texts());
        Assert.DoesNotContain("private", Notebook.Text(erased), StringComparison.Ordinal);
        Assert.Equal(Notebook.Text(erased), Notebook.Text(Erasure.Erase(erased)));
    }

    [Fact]
    public void An_erased_body_does_not_come_back_with_a_merge()
    {
        var whole = Notebook.Read(ann.Note(Say.Told("private")), ann.Note(Say.Told("2")));
        var erased = Erasure.Erase(whole, whole.Entries[0]);
        Assert.Equal(erased.ToBytes(), LogMerge.Union(whole, erased).ToBytes());
        Assert.Equal(["2"], erased.Standing.Texts());
    }
}
