using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Papers;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Browser;

/// <summary>Looking for the valve of station 14 of the demo on Ground, without a browser.</summary>
public sealed class SeekingTests : BunitContext
{
    private const string Thing = "s14/valve 1";

    private readonly RecordingMap map = new();
    private readonly GroundHand hand = new();
    private readonly LocatingDesk desk = new();
    private readonly List<NoteDraft> drafts = [];
    private readonly DeviceLog log = new(new MemoryDevice());

    public SeekingTests() => Services.AddSingleton<IGroundMap>(map).AddSingleton<IPhotoShelf>(new MemoryShelf()).AddSingleton<IBackdropShelf>(new MemoryBackdrops()).AddSingleton<IWhereabouts>(new FixedWhereabouts());

    [Fact]
    public async Task What_is_hidden_is_chosen_in_the_list_and_its_heat_lies_on_the_map_beside_the_same_in_words()
    {
        var page = await SeekAsync();
        Assert.Equal("Where is it: valve of station 14", page.Find(".seeking h2").TextContent);
        Assert.NotNull(map.Likely);
        Assert.Empty(map.Signs);
        Assert.Contains("put the signal on its conductor", page.Find(".seek-first").TextContent, StringComparison.Ordinal);
        var stops = desk.Answer!.Answer.Route!.Told;
        Assert.Equal(stops.Select(stop => stop.At!.Value), map.Stops);
        Assert.Equal($"Here {Wording.Minutes(stops[0].Minutes)}: {Wording.Percent(stops[0].Found)}", page.Find(".stop-worth").TextContent);
        Assert.Contains("east of box 6", page.Find(".likely-places li").TextContent, StringComparison.Ordinal);
        page.Find(".seeking .sheet-head button").Click();
        Assert.Null(map.Likely);
        Assert.Empty(map.Stops);
        Assert.NotEmpty(map.Signs);
    }

    [Fact]
    public async Task One_tap_fills_in_a_search_in_vain_with_the_minutes_of_the_stop_and_the_heat_changes_once_it_is_stored()
    {
        var page = await SeekAsync();
        var before = map.Likely!.Picture;
        page.FindAll(".stop")[1].Click();
        page.Find(".seek-nothing").Click();
        var draft = Assert.Single(drafts);
        var stop = desk.Answer!.Answer.Route!.Told[1];
        var searches = draft.ToFacts().Value.Cast<SearchFact>().ToList();
        Assert.Equal(stop.Efforts.Select(effort => effort.How), searches.Select(search => search.How));
        Assert.Equal(stop.Minutes, searches.Sum(search => search.Minutes!.Value), 1.0);
        Assert.All(searches, search => Assert.Equal(("s14", PlacingDraft.Rounded(stop.At!.Value)), (search.About, search.Where.Single())));
        draft.Sought!.Minutes["probe rod"] = "25";
        foreach (var fact in draft.ToFacts().Value)
        {
            await log.NoteAsync(fact);
        }

        Locate(page);
        Assert.NotEqual(before, map.Likely!.Picture);
    }

    [Fact]
    public async Task A_tapped_place_takes_sounds_and_the_ends_of_signals_and_a_tap_on_a_stop_is_that_stop()
    {
        var page = await SeekAsync();
        map.Tap(150, -28);
        Press(page, "Heard");
        map.Tap(map.Stops[1].EastMetres + 0.5, map.Stops[1].NorthMetres);
        Press(page, "Not heard");
        page.Find(".seek-outcomes .tick input").Change(true);
        map.Tap(120, -26);
        map.Tap(131, -27);
        Press(page, "Signal swells");
        var facts = drafts.Select(draft => draft.ToFacts().Value.Single()).ToList();
        Assert.Equal(("heard", "s14", new Position(150, -28)), ((SignFact)facts[0]) is var heard ? (heard.How, heard.About, heard.Where.Single()) : default);
        Assert.Equal(PlacingDraft.Rounded(map.Stops[1]), ((SignFact)facts[1]).Where.Single());
        var trace = (TraceFact)facts[2];
        Assert.Equal(("wire tracer", "s14", "swell"), (trace.How, trace.Of.Single(), trace.Ended));
        Assert.Equal([new Position(120, -26), new(131, -27)], trace.Route);
    }

    [Fact]
    public async Task Found_it_places_the_valve_of_that_station_and_nothing_of_it_is_hidden_any_more()
    {
        var page = await SeekAsync();
        map.Tap(145, -20);
        page.Find(".seek-found").Click();
        await page.Find(".placing").SubmitAsync();
        var valve = Assert.IsType<ValveFact>(log.Document.Entries[^1].Fact);
        Assert.Equal(("s14", new Position(145, -20), Grade.Measured), (valve.Station, valve.Position!.Value, valve.Sure));
        Assert.DoesNotContain(Notebook.Open(log.Document, PracticeBook.Default).Hidden(), hidden => hidden.Station == "s14");
    }

    [Fact]
    public async Task What_keeps_it_from_being_told_is_said_with_what_to_do()
    {
        var page = await SeekAsync();
        desk.End(new Problem("ground", "has no position and no spot noted", "Note what is on the ground"));
        Show(page);
        Assert.Contains("Note what is on the ground", page.Find(".seeking .missing").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fault_that_the_diagnosis_puts_into_the_ground_is_noted_as_sought_before_the_first_note_about_it()
    {
        var fault = new HiddenName("station-s9", "fault in the ground, station 9", "fault", null, 1, null);
        var seek = new SeekHand { Thing = fault.Id };
        seek.Take(new GroundTap(new Position(3, 4), 0.1));
        var view = Underturf.Property.PropertyHistory.Fold([]).Now;
        var facts = new SeekNotes(fault, seek, null, view, PracticeBook.Default.Locating).Trace("lost").ToFacts().Value;
        Assert.Equal([("station-s9", "fault")], facts.OfType<SoughtFact>().Select(sought => (sought.Id, sought.What)));
        Assert.Equal(["station-s9"], Assert.IsType<TraceFact>(facts[^1]).Of);
    }

    [Fact]
    public async Task What_was_typed_of_a_search_outlives_the_page()
    {
        var page = await SeekAsync();
        page.Find(".seek-nothing").Click();
        var draft = drafts.Single();
        draft.Sought!.Minutes["hand dig"] = "40";
        var kept = KeptDesk.Read(new KeptDesk("memorial-garden", null, "Ground", true, draft, null, BoxTask.Look, null).Write())!.Note!;
        Assert.Equal(draft.ToFacts().Value.Cast<SearchFact>().Select(search => (search.How, search.Minutes, search.About)), kept.ToFacts().Value.Cast<SearchFact>().Select(search => (search.How, search.Minutes, search.About)));
    }

    private async Task<IRenderedComponent<GroundPlace>> SeekAsync()
    {
        await log.OpenDeviceAsync();
        await log.TakeInAsync("Served log", await File.ReadAllBytesAsync(Checkout.DemoLog));
        var page = Render<GroundPlace>(Parameters);
        page.Find($".ground-line[data-hidden='{Thing}']").Click();
        Locate(page);
        return page;
    }

    /// <summary>As the worker does it.</summary>
    private void Locate(IRenderedComponent<GroundPlace> page)
    {
        var located = Notebook.Open(log.Document, PracticeBook.Default).Locate(Thing).Value;
        desk.Turn(new LocateAsk(Thing, null));
        desk.Begin(Opened);
        desk.End(new LocatedThing(located, new HeatLayer(HeatPicture.Make(located.Heat!), located.Heat!.Corner, located.Heat.SideMetres)));
        Show(page);
    }

    private void Show(IRenderedComponent<GroundPlace> page) => page.Render(Parameters);

    private OpenedLog Opened => new(new Answers("0.1.0", "1", [], [new Move("look", "box 2", 12, 40, "", "q1") { Place = "b2" }]), []) { Hidden = Notebook.Open(log.Document, PracticeBook.Default).Hidden() };

    private void Parameters(ComponentParameterCollectionBuilder<GroundPlace> with) => with
        .Add(p => p.History, log.History)
        .Add(p => p.Opened, Opened)
        .Add(p => p.Hand, hand)
        .Add(p => p.Looking, desk)
        .Add(p => p.IsNewest, true)
        .Add(p => p.TakesNotes, true)
        .Add(p => p.Note, drafts.Add)
        .Add(p => p.Question, EventCallback.Factory.Create<string>(this, _ => { }))
        .Add(p => p.SaveCopy, EventCallback.Empty)
        .Add(p => p.Store, async write => (await log.NoteAsync(write)).Problem);

    private static void Press(IRenderedComponent<GroundPlace> page, string text) => page.FindAll("button").Single(button => button.TextContent == text).Click();
}
