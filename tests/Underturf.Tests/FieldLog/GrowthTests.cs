using CsCheck;
using Underturf.FieldLog;

namespace Underturf.Tests.FieldLog;

/// <summary>A long log takes a note, and a union a few, without being gone through again: what comes out is what reading all of it would give.</summary>
public sealed class GrowthTests
{
    [Fact]
    public void A_log_that_grew_entry_by_entry_is_the_log_that_its_bytes_are_read_as() => Cases.Each(Notebook.Pages, 80, pages =>
    {
        var grown = LogDocument.Read(ReadOnlyMemory<byte>.Empty);
        foreach (var entry in pages)
        {
            grown = grown.With(entry);
            AssertSame(LogDocument.Read(grown.ToBytes()), grown);
        }
    });

    [Fact]
    public void Logs_that_grew_from_one_do_not_see_each_other() => Cases.Each(Notebook.Pages, 40, pages =>
    {
        for (var cut = 1; cut < pages.Length; cut++)
        {
            var stem = pages[..cut].Aggregate(LogDocument.Read(ReadOnlyMemory<byte>.Empty), (log, entry) => log.With(entry));
            var (was, one, two) = (stem.ToBytes().ToArray(), stem.With(pages[cut]), stem.With(pages[^1]));
            AssertSame(LogDocument.Read(was), stem);
            AssertSame(LogDocument.Read(was).With(pages[cut]), one);
            AssertSame(LogDocument.Read(was).With(pages[^1]), two);
        }
    });

    [Fact]
    public void So_is_one_whose_entries_came_in_any_order() => Cases.Each(Notebook.Pages.SelectMany(pages => Gen.Shuffle(pages)), 80, pages =>
    {
        var grown = LogDocument.Read(ReadOnlyMemory<byte>.Empty);
        foreach (var entry in pages)
        {
            grown = grown.With(entry);
            AssertSame(LogDocument.Read(grown.ToBytes()), grown);
        }
    });

    [Fact]
    public void A_union_of_plain_logs_is_the_log_that_its_bytes_are_read_as() => Cases.Each(Notebook.Pages, 80, pages =>
    {
        for (var cut = 0; cut <= pages.Length; cut++)
        {
            var (one, two) = (Notebook.Read(pages[..cut]).InOrder(), Notebook.Read(pages[(cut / 2)..]).InOrder());
            var united = LogMerge.Union(one, two);
            AssertSame(LogDocument.Read(united.ToBytes()), united);
            AssertSame(LogDocument.Read(LogMerge.Union(two, one).ToBytes()), united);
        }
    });

    [Fact]
    public void Strikes_forks_gaps_and_erased_copies_are_said_as_reading_says_them()
    {
        var writer = new Notebook("writer-a");
        Entry[] notes = [writer.Note(new BoxFact { Id = "b1" }), writer.Note(new StrikeFact { Entry = "writer-a/1" }), writer.Note(new RestoreFact { Entry = "writer-a/1" }), writer.Note(new StrikeFact { Entry = "writer-a/9" })];
        var copy = writer.Copy();
        Entry[] more = [writer.Note(new BoxFact { Id = "b2" }), copy.Note(new BoxFact { Id = "b3" }), Erasure.Erase(notes[0]), writer.Note(new StrikeFact { Entry = "writer-a/2" })];
        var gap = new Notebook("writer-b");
        gap.Note(new BoxFact { Id = "b4" });
        var grown = Notebook.Read(notes[0]);
        foreach (var entry in (Entry[])[.. notes[1..], .. more, gap.NoteLater(new BoxFact { Id = "b5" }, 100_000), .. notes[..1]])
        {
            var united = LogMerge.Union(grown.InOrder(), Notebook.Read(entry));
            AssertSame(LogDocument.Read(united.ToBytes()), united);
            grown = grown.With(entry);
            AssertSame(LogDocument.Read(grown.ToBytes()), grown);
        }
    }

    private static void AssertSame(LogDocument read, LogDocument grown)
    {
        Assert.Equal(read.Problems, grown.Problems);
        Assert.Equal(read.Property, grown.Property);
        Assert.Equal(Texts(read.Entries), Texts(grown.Entries));
        Assert.Equal(Texts(read.Standing), Texts(grown.Standing));
        Assert.Equal(read.Lines.Select(line => line.Number), grown.Lines.Select(line => line.Number));
    }

    private static IEnumerable<string> Texts(IEnumerable<Entry> entries) => entries.Select(Notebook.Text);
}
