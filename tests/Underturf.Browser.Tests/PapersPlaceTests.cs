using Bunit;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Browser;

/// <summary>The place Papers without a browser, on invented papers.</summary>
public sealed class PapersPlaceTests : BunitContext
{
    private static readonly MadePaper chart = new("station-chart.pdf", "Station chart", new byte[2000], new string('a', 64), "0.1.0", "1");
    private static readonly PropertyHistory demo = PropertyHistory.Fold(LogDocument.Read(File.ReadAllBytes(Checkout.DemoLog)).Standing);

    private readonly PaperDesk desk = new();
    private readonly List<Fact> stored = [];
    private readonly List<MadePaper> handed = [];

    private IRenderedComponent<PapersPlace> Open(bool ready = true, PropertyHistory? history = null) => Render<PapersPlace>(p => p
        .Add(b => b.History, history ?? demo).Add(b => b.Desk, desk).Add(b => b.Ready, ready).Add(b => b.TakesNotes, true)
        .Add(b => b.Make, () => { }).Add(b => b.Cancel, () => { }).Add(b => b.Hand, handed.Add)
        .Add(b => b.Store, fact => { stored.Add(fact); return Task.FromResult<Problem?>(null); }));

    [Fact]
    public void Before_anything_was_thought_it_says_what_is_missing()
    {
        var place = Open(ready: false, PropertyHistory.Fold([]));
        Assert.True(place.Find(".papers-make").HasAttribute("disabled"));
        Assert.Contains("not worked out yet", place.Find("[role=status]").TextContent, StringComparison.Ordinal);
        Assert.Equal(3, place.FindAll(".paper-lacks").Count);
    }

    [Fact]
    public void What_is_made_is_handed_out_as_a_file_and_noted_as_handed_over()
    {
        desk.Turn(demo);
        desk.Begin(demo);
        desk.End(new[] { chart });
        var place = Open();
        place.Find(".paper-hand").Click();
        place.Find(".paper-issue").Click();
        Assert.Equal([chart], handed);
        Assert.Equal(chart.Hash, Assert.IsType<PaperIssuedFact>(stored.Single()).Hash);
    }

    [Fact]
    public void Papers_that_were_made_before_the_newest_note_say_so()
    {
        desk.Turn(demo);
        desk.Begin(demo);
        desk.End(new[] { chart });
        Assert.Contains("newer note", Open(history: PropertyHistory.Fold([])).Find("[role=status]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void What_kept_the_papers_from_being_made_is_said_with_what_to_do()
    {
        desk.Turn(demo);
        desk.Begin(demo);
        desk.End(new Problem("working it out", "was given up for a newer note", "Begin it again"));
        Assert.Contains("Begin it again", Open().Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }
}
