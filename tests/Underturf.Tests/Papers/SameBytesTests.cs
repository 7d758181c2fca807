using System.Text;
using Underturf.Papers;
using Underturf.Property.Practice;
using Underturf.Reasoning;

namespace Underturf.Tests.Papers;

public sealed class SameBytesTests
{
    [Fact]
    public void The_same_log_and_book_give_the_same_bytes()
    {
        var again = PaperSet.Make(Notebook.Open(Worlds.Demo.Log, PracticeBook.Default));
        Assert.All(Worlds.DemoPapers.Zip(again), pair => Assert.True(pair.First.Bytes.Span.SequenceEqual(pair.Second.Bytes.Span), pair.First.FileName));
    }

    [Fact]
    public void The_papers_bear_the_moment_of_the_last_note_and_no_other()
    {
        var pdf = Encoding.Latin1.GetString(Worlds.DemoPapers.Bytes("findings.pdf").Span);
        var noted = Worlds.Demo.Log.LastNoted!.Value.Moment.ToString("yyyyMMddHHmmss");
        Assert.Contains($"/CreationDate(D:{noted}", pdf, StringComparison.Ordinal);
        Assert.Contains($"/ModDate(D:{noted}", pdf, StringComparison.Ordinal);
    }
}
