using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Tests.FieldLog;

/// <summary>A long log is read in parts: first what there is, then the rest; and of another copy only what is new.</summary>
public sealed class GlanceTests
{
    private const int Readings = 1_200;

    private readonly Notebook ann = new("writer-a");
    private readonly Notebook ben = new("writer-b", startMilliseconds: 1_932_909_121_000);

    [Fact]
    public void A_log_that_is_read_in_slices_is_the_log_that_is_read_in_one_go()
    {
        byte[] bytes = [.. Long(), .. "no entry\n\n"u8, .. Notebook.File(ann.Note(new BoxFact { Id = "b9" }))[..^40]];
        var (reading, turns) = (new LogReading(bytes), 0);
        while (reading.Document is null)
        {
            reading.Go(100);
            turns++;
        }

        var whole = LogDocument.Read(bytes);
        Assert.True(turns > Readings / 100);
        Assert.Equal(whole.Problems, reading.Document.Problems);
        Assert.Equal(whole.Entries.Select(entry => entry.Id), reading.Document.Entries.Select(entry => entry.Id));
        Assert.Equal(whole.Lines.Select(line => (line.Number, line.Entry is null)), reading.Document.Lines.Select(line => (line.Number, line.Entry is null)));
    }

    [Fact]
    public void A_glance_shows_the_same_things_and_lets_the_next_note_follow()
    {
        var bytes = Long();
        var (glance, whole) = (LogGlance.Of(bytes, "writer-a")!, LogDocument.Read(bytes));
        Assert.True(glance.Entries.Count < 10);
        Assert.Equal((whole.Property, whole.LastNoted, whole.LastHeader("writer-a")), (glance.Property, glance.LastNoted, glance.LastHeader("writer-a")));
        var (seen, known) = (PropertyHistory.Fold(glance.Standing).Now, PropertyHistory.Fold(whole.Standing).Now);
        Assert.Equal(known.Boxes.Select(box => (box.Key, box.Value.Label)), seen.Boxes.Select(box => (box.Key, box.Value.Label)));
        Assert.Equal(known.Stations.Keys, seen.Stations.Keys);
    }

    [Fact]
    public void A_thing_that_was_struck_is_not_shown_by_a_glance()
    {
        var box = ann.Note(new BoxFact { Id = "b7" });
        byte[] bytes = [.. Notebook.File(box), .. Long(), .. Notebook.File(ann.Note(new StrikeFact { Entry = box.Id.ToString() }))];
        Assert.DoesNotContain("b7", PropertyHistory.Fold(LogGlance.Of(bytes, "writer-a")!.Standing).Now.Boxes.Keys);
    }

    [Fact]
    public void A_short_log_and_one_that_is_all_things_are_read_whole()
    {
        Assert.Null(LogGlance.Of(Notebook.File(ann.Note(new BoxFact { Id = "b1" })), "writer-a"));
        Assert.Null(LogGlance.Of(Notebook.File(Enumerable.Range(0, Readings).Select(i => ann.Note(new BoxFact { Id = $"b{i}" }))), "writer-a"));
    }

    [Fact]
    public void Of_another_copy_only_lines_that_are_not_the_same_to_the_byte_are_fresh() => Cases.Each(Notebook.Pages, 60, pages =>
    {
        for (var cut = 0; cut <= pages.Length; cut++)
        {
            var log = Notebook.Read(pages[..cut]);
            var news = LogNews.Of(Notebook.File([.. pages.Reverse()]), log);
            Assert.Equal(pages[cut..].Select(entry => entry.Id).Reverse(), LogDocument.Read(news.Fresh).Lines.Select(line => line.Entry!.Id));
            Assert.Equal(log.Entries.Select(entry => entry.Id).ToHashSet(), news.Known.Select(entry => entry.Id).ToHashSet());
        }
    });

    /// <summary>Two writers: a few things, readings without end, and strikes of readings.</summary>
    private byte[] Long()
    {
        List<Entry> entries = [ann.Note(new BoxFact { Id = "b1", Label = "1" }), ben.Note(new StationFact { Id = "s1", Controller = "c1", Terminal = 1 }), ann.Note(new BoxFact { Id = "b1", Label = "one" })];
        for (var i = 0; i < Readings; i++)
        {
            var read = (i % 2 == 0 ? ann : ben).Note(new ReadingFact { How = "station ohms", Stations = ["s1"], Value = Shown.Parse($"{20 + (i % 9)} ohm").Value });
            entries.Add(read);
            if (i % 10 == 0)
            {
                entries.Add(ann.Note(new StrikeFact { Entry = read.Id.ToString() }));
            }
        }

        return Notebook.File(entries.OrderBy(entry => entry.Header.Noted));
    }
}
