using Underturf.FieldLog;

namespace Underturf.Tests.FieldLog;

/// <summary>What a log that is only added to takes of lines that somebody hands it.</summary>
public sealed class IntakeTests
{
    [Fact]
    public void Whatever_two_copies_hold_each_ends_with_the_entries_of_their_union() => Cases.Each(Notebook.Pages, 60, pages =>
    {
        for (var cut = 0; cut <= pages.Length; cut++)
        {
            var (one, two) = (Notebook.Read(pages[..cut]), Notebook.Read(pages[(cut / 2)..]));
            var united = Hashes(LogMerge.Union(one, two));
            Assert.Equal(united, Hashes(one.With(LogIntake.Of(one, two.ToBytes()).Added)));
            Assert.Equal(united, Hashes(two.With(LogIntake.Of(two, one.ToBytes()).Added)));
        }
    });

    [Fact]
    public void What_is_taken_is_not_taken_again() => Cases.Each(Notebook.Pages, 60, pages =>
    {
        var log = Notebook.Read(pages);
        Assert.Empty(LogIntake.Of(log, log.ToBytes()).Added);
    });

    [Fact]
    public void Both_sides_of_a_fork_are_taken()
    {
        var mine = new Notebook("writer-a");
        var first = mine.Note(new BoxFact { Id = "b1" });
        var copy = mine.Copy();
        var log = Notebook.Read(first, mine.Note(new BoxFact { Id = "b2" }));
        var other = copy.Note(new BoxFact { Id = "b3" });
        Assert.Equal([other.Header.Hash], LogIntake.Of(log, Notebook.File(first, other)).Added.Select(entry => entry.Header.Hash));
    }

    [Fact]
    public void An_erased_copy_is_taken_and_the_body_does_not_come_back()
    {
        var entry = new Notebook("writer-a").Note(new ToldFact { Who = "a neighbour", Text = "their number" });
        var (log, erased) = (Notebook.Read(entry), Erasure.Erase(entry));
        var after = log.With(LogIntake.Of(log, Notebook.File(erased)).Added);
        Assert.True(Assert.Single(after.Entries).Erased);
        Assert.Empty(LogIntake.Of(after, log.ToBytes()).Added);
    }

    [Fact]
    public void An_empty_log_takes_the_first_property_that_it_is_handed()
    {
        var entry = new Notebook("writer-a").Note(new BoxFact { Id = "b1" });
        Assert.Single(LogIntake.Of(LogDocument.Read(ReadOnlyMemory<byte>.Empty), Notebook.File(entry)).Added);
    }

    [Fact]
    public void Each_line_that_is_not_taken_is_named_with_its_reason_and_the_others_are_taken()
    {
        var entry = new Notebook("writer-a").Note(new BoxFact { Id = "b1" });
        var stranger = new Notebook("writer-b", "garden-2").Note(new BoxFact { Id = "b1" });
        var changed = Notebook.Text(entry).Replace("b1", "b2", StringComparison.Ordinal);
        var taken = LogIntake.Of(Notebook.Read(new Notebook("writer-c").Note(new BoxFact { Id = "b9" })), Notebook.File(changed, "{", Notebook.Text(stranger), Notebook.Text(entry)));
        Assert.Equal([entry.Header.Hash], taken.Added.Select(each => each.Header.Hash));
        Assert.Equal(["line 1", "line 2", "line 3, writer-b/1"], taken.Refused.Select(problem => problem.Place));
        Assert.Contains("changed after it was sealed", taken.Refused[0].Reason, StringComparison.Ordinal);
        Assert.Contains("'garden-2'", taken.Refused[2].Reason, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Hashes(LogDocument log) => log.Entries.Select(entry => $"{entry.Header.Hash} {entry.Erased}").Order();
}
