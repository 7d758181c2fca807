using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Browser;

/// <summary>The place Ground without a browser: cards, list, placing and moving on a map that only keeps what it is told.</summary>
public sealed class GroundPlaceTests : BunitContext
{
    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);
    private static readonly Explanation splice = new("bad-splice", 0.8, "A bad splice", [new("box 4", 0.5), new("box 3", 0.4, "box 2"), new("box 15", 0.01)], [], "Remake it");
    private static readonly OpenQuestion high = new("q1", "station 9 reads high", ["9"], [splice], [], [], Settled: false);
    private static readonly Move look = new("look at the splices", "box 2", 12, 40, "", "q1") { Place = "b2" };

    private readonly RecordingMap map = new();
    private readonly GroundHand hand = new();
    private readonly LocatingDesk looking = new();
    private readonly List<NoteDraft> noted = [];
    private readonly DeviceLog log = new(new MemoryDevice());
    private readonly FixedWhereabouts whereabouts = new();
    private string? asked;

    public GroundPlaceTests() => Services.AddSingleton<IGroundMap>(map).AddSingleton<IPhotoShelf>(new MemoryShelf()).AddSingleton<IBackdropShelf>(new MemoryBackdrops()).AddSingleton<IWhereabouts>(whereabouts);

    [Fact]
    public async Task A_tapped_box_shows_its_card_with_what_the_log_says_of_it_and_opens_a_note_at_that_place()
    {
        var page = await OpenAsync();
        Tap(page, 95, 45);
        var card = page.Find(".ground-card");
        Assert.Equal("box 4", card.QuerySelector("h2")!.TextContent);
        Assert.Contains("311.7 ft east, 147.6 ft north", card.TextContent, StringComparison.Ordinal);
        Assert.Equal("measured", card.QuerySelector(".ground-where .grade-measured")!.TextContent);
        Assert.Contains(card.QuerySelectorAll("dd"), fact => fact.TextContent.Contains("valve v7 (station 7)", StringComparison.Ordinal));
        Assert.Equal("b4", map.Ringed);
        page.Find(".ground-note").Click();
        Assert.Equal(("b4", (NoteKind?)null), (noted.Single().Place, noted.Single().Kind));
    }

    [Fact]
    public async Task Every_thing_on_the_map_is_in_the_list_and_opens_its_card_from_there()
    {
        var page = await OpenAsync();
        Assert.Equal(map.Drawn!.Features.Select(f => f.Id).Order(), page.FindAll(".ground-line[data-thing]").Select(line => line.GetAttribute("data-thing")!).Order());
        page.Find("[data-thing=lime]").Click();
        Assert.Equal("old lime", page.Find(".ground-card h2").TextContent);
        Assert.Equal("lime", map.Ringed);
        page.Find(".ground-note").Click();
        Assert.Equal(NoteKind.Words, noted.Single().Kind);
    }

    [Fact]
    public async Task The_next_move_and_the_suspected_places_are_marked_with_the_probability_that_the_belief_gives()
    {
        var page = await OpenAsync(new Answers("0.1.0", "1", [high], [look]));
        Assert.Equal([(true, "next", 1), (false, "40 %", 1), (false, "32 %", 2)], map.Signs.Select(sign => (sign.Next, sign.Words, sign.Line.Count)));
        Assert.Equal([new Position(40, 15), new Position(70, 20)], map.Signs[2].Line);
        Tap(page, 95, 45);
        Assert.Contains("Station 9 reads high: 40 %", page.Find(".ground-mark").TextContent, StringComparison.Ordinal);
        page.Find(".ground-mark button").Click();
        Assert.Equal("q1", asked);
    }

    [Fact]
    public async Task An_isolation_valve_is_placed_with_the_stations_that_it_shuts_off_and_can_be_made_dry()
    {
        var page = await OpenAsync();
        Press(page, "Place a thing");
        Press(page, "isolation valve");
        Tap(page, 20, 12);
        Press(page, "7");
        Press(page, "8");
        await page.Find(".placing").SubmitAsync();
        var valve = Assert.IsType<IsolationValveFact>(log.Document.Entries[^1].Fact);
        Assert.Equal(("1", new Position(20, 12), "s7,s8"), (valve.Label, valve.Position!.Value, string.Join(',', valve.Shuts)));
        Assert.Equal("isolation valve 1", page.Find(".ground-card h2").TextContent);
        Assert.Equal((GroundWords.IsolationValve, "1"), (map.Drawn!.Find(valve.Id)!.Kind, map.Drawn.Find(valve.Id)!.Sign));
        Assert.NotNull(page.Find(".make-dry"));
    }

    [Fact]
    public async Task A_point_of_connection_takes_a_price_and_asks_again_where_it_is_no_number()
    {
        var page = await OpenAsync();
        Press(page, "Place a thing");
        Press(page, "point of connection");
        Tap(page, 2, 1);
        page.FindAll(".placing input")[^1].Input("4,20 a lot");
        await page.Find(".placing").SubmitAsync();
        Assert.Contains("digits with a point", page.Find(".missing").TextContent, StringComparison.Ordinal);
        page.FindAll(".placing input")[^1].Input("4.20");
        Press(page, "1,000 gal");
        await page.Find(".placing").SubmitAsync();
        var supply = Assert.IsType<WaterSupplyFact>(log.Document.Entries[^1].Fact);
        Assert.Equal((4.2, 3.785), (supply.Price!.Value, Math.Round(supply.PriceOf!.Value.CubicMetres, 3)));
    }

    [Fact]
    public async Task A_pipe_is_noted_by_its_two_ends_with_or_without_its_way()
    {
        var page = await OpenAsync();
        await log.NoteAsync(new WaterSupplyFact { Id = "poc", Position = new(0, 0) });
        page.Render(p => p.Add(g => g.History, log.History));
        Press(page, "Place a thing");
        Press(page, "pipe");
        await page.Find(".placing").SubmitAsync();
        Assert.Contains("two things", page.Find(".missing").TextContent, StringComparison.Ordinal);
        Press(page, "point of connection");
        Press(page, "lookout valve");
        await page.Find(".placing").SubmitAsync();
        var pipe = Assert.IsType<PipeFact>(log.Document.Entries[^1].Fact);
        Assert.Equal(("poc", "v40", 0), (pipe.From, pipe.To, pipe.Route.Count));
        Assert.Equal((GroundForm.Line, Grade.Estimated), (map.Drawn!.Find(pipe.Id)!.Form, map.Drawn.Find(pipe.Id)!.Grade));
    }

    [Fact]
    public async Task A_new_box_is_an_entry_with_an_id_of_its_own_the_next_number_and_no_more_than_an_estimate()
    {
        var page = await OpenAsync();
        Press(page, "Place a thing");
        Press(page, "box");
        Tap(page, 150, -60);
        Assert.Equal([new Position(150, -60)], map.Sketched);
        await page.Find(".placing").SubmitAsync();
        var box = Assert.IsType<BoxFact>(log.Document.Entries[^1].Fact);
        Assert.Equal(("page-a-1", "16", new Position(150, -60), Grade.Estimated), (box.Id, box.Label, box.Position!.Value, box.Sure));
        Assert.Equal("box 16", page.Find(".ground-card h2").TextContent);
        Assert.Contains("page-a-1", map.Drawn!.Features.Select(f => f.Id));
    }

    [Fact]
    public async Task A_moved_thing_is_a_new_entry_and_the_older_one_stays_as_it_was()
    {
        var page = await OpenAsync();
        var before = log.Document.ToBytes().ToArray();
        Tap(page, 95, 45);
        page.Find(".ground-move").Click();
        Tap(page, 60, -60);
        Press(page, "Change");
        Press(page, "measured");
        await page.Find(".placing").SubmitAsync();
        Assert.Equal(before, log.Document.ToBytes().ToArray()[..before.Length]);
        var moved = Assert.IsType<BoxFact>(log.Document.Entries[^1].Fact);
        Assert.Equal(("b4", new Position(60, -60), Grade.Measured), (moved.Id, moved.Position!.Value, moved.Sure));
        Assert.Equal(new Position(60, -60), map.Drawn!.Find("b4")!.Shape[0]);
    }

    [Fact]
    public async Task A_moved_building_keeps_its_form_with_its_middle_where_the_map_was_tapped()
    {
        var page = await OpenAsync();
        Tap(page, 96, 60);
        Assert.Equal("chapel", page.Find(".ground-card h2").TextContent);
        page.Find(".ground-move").Click();
        Tap(page, 196, 257);
        await page.Find(".placing").SubmitAsync();
        Assert.Equal([new Position(184, 248), new(208, 248), new(208, 266), new(184, 266)], map.Drawn!.Find("chapel")!.Shape);
        Assert.Equal("chapel", map.Drawn!.Find("chapel")!.Name);
    }

    [Fact]
    public async Task An_outline_needs_three_corners_and_says_so_before_anything_is_stored()
    {
        var page = await OpenAsync();
        Press(page, "Place a thing");
        Press(page, "bed");
        Tap(page, 100, -80);
        Tap(page, 120, -80);
        await page.Find(".placing").SubmitAsync();
        Assert.Contains("Tap at least 3 points", page.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Press(page, "Take the middle");
        await page.Find(".placing").SubmitAsync();
        Assert.Equal([new Position(100, -80), new(120, -80), new(100, -60)], Assert.IsType<GroundFact>(log.Document.Entries[^1].Fact).Shape);
    }

    [Fact]
    public async Task A_thing_without_a_place_is_placed_from_the_list_and_leaves_it()
    {
        await LoadAsync();
        await log.NoteAsync(new ValveFact { Id = "v99", Label = "99" });
        var page = await OpenAsync();
        page.Find(".unplaced .button").Click();
        Tap(page, 33, -70);
        await page.Find(".placing").SubmitAsync();
        Assert.Empty(page.FindAll(".unplaced"));
        Assert.Equal([new Position(33, -70)], map.Drawn!.Find("v99")!.Shape);
    }

    [Fact]
    public async Task A_distance_is_measured_from_tap_to_tap_and_stores_nothing()
    {
        var page = await OpenAsync();
        var before = log.Document.Entries.Count;
        Press(page, "Measure");
        Tap(page, 0, -80);
        Tap(page, 30, -80);
        // 30 m / 0.3048 m, exact by definition of the foot.
        Assert.Equal("98.4 ft", page.Find(".points-length").TextContent);
        Assert.Equal("98.4 ft", map.Said);
        Assert.Equal(before, log.Document.Entries.Count);
    }

    [Fact]
    public async Task A_place_that_was_left_before_the_map_could_be_drawn_opens_none_and_closes_nobody_else_s()
    {
        var ready = new TaskCompletionSource();
        map.Ready = ready.Task;
        await OpenAsync();
        await DisposeComponentsAsync();
        ready.SetResult();
        Assert.Equal(0, map.Opened);
        Assert.Null(map.Drawn);
    }

    [Fact]
    public async Task A_box_is_tied_to_two_marks_one_after_the_other_and_its_card_lists_the_distances()
    {
        var page = await OpenAsync();
        Tap(page, 70, 20);
        page.Find(".ground-tie").Click();
        var lime = map.Drawn!.Find("lime")!.Shape[0];
        Tap(page, lime.EastMetres + 1, lime.NorthMetres);
        Assert.Contains("old lime", page.Find(".tying .points-said").TextContent, StringComparison.Ordinal);
        page.Find(".tie-distance").Input("41.5");
        page.Find(".tying").Submit();
        var building = map.Drawn!.Features.First(f => f.Kind == "building");
        Tap(page, building.Shape[2].EastMetres, building.Shape[2].NorthMetres);
        page.Find(".tie-distance").Input("12 m");
        page.Find(".tying").Submit();
        Press(page, "Put away");
        Assert.Equal(2, page.FindAll(".ground-card .ties li").Count);
        Assert.Contains("41.5 ft from old lime", page.Find(".ground-card .ties").TextContent, StringComparison.Ordinal);
        var ties = log.History.Facts.Ties.Select(note => note.Fact).Where(tie => tie.Thing == "b3").ToList();
        Assert.Equal(("b3", "lime", (Position?)null), (ties[0].Thing, ties[0].Mark, ties[0].Corner));
        Assert.Equal((building.Id, building.Shape[2], 12.0), (ties[1].Mark, ties[1].Corner, ties[1].Distance.Metres));
        Assert.All(map.Ties.Where(tie => tie.Thing == "b3" && tie.Words.Length > 0), tie => Assert.Equal(2, tie.Line.Count));
        Assert.Contains(map.Ties, tie => tie.Thing == "b3" && tie.Words.Length == 0);
    }

    [Fact]
    public async Task The_best_marks_are_a_tap_away_and_what_only_ties_place_is_on_the_map()
    {
        var page = await OpenAsync();
        Assert.Equal(Grade.Measured, map.Drawn!.Find("yew")!.Grade);
        Tap(page, 255, -20);
        page.Find(".ground-tie").Click();
        var best = page.FindAll(".tie-best .choice");
        Assert.Equal(2, best.Count);
        Assert.Contains("the east corner of avenue, the northern one, about ", best[0].TextContent, StringComparison.Ordinal);
        best[0].Click();
        page.Find(".tie-distance").Input("40");
        page.Find(".tying").Submit();
        Assert.Equal(new Position(262, -30), log.History.Facts.Ties[^1].Fact.Corner);
        Assert.Single(page.FindAll(".tie-best .choice"));
    }

    [Fact]
    public async Task A_tap_on_nothing_known_and_a_tape_that_shows_nothing_are_answered_with_what_to_do()
    {
        var page = await OpenAsync();
        Tap(page, 70, 20);
        page.Find(".ground-tie").Click();
        Tap(page, 4000, 4000);
        Assert.Contains("Nothing known is there", page.Find(".tying .missing").TextContent, StringComparison.Ordinal);
        page.FindAll(".tying .choice")[0].Click();
        page.Find(".tie-distance").Input("far");
        page.Find(".tying").Submit();
        Assert.Contains("Write what the tape shows", page.FindAll(".tying .missing")[^1].TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(log.History.Facts.Ties, tie => tie.Fact.Thing == "b3");
    }

    [Fact]
    public async Task A_box_that_nobody_placed_is_tied_from_the_list_and_lies_on_a_circle_around_the_mark()
    {
        await LoadAsync();
        await log.NoteAsync(new BoxFact { Id = "lost", Label = "lost box" });
        var page = await OpenAsync();
        page.Find("[data-unplaced=lost]").Click();
        page.Find(".ground-tie").Click();
        var lime = map.Drawn!.Find("lime")!.Shape[0];
        Tap(page, lime.EastMetres, lime.NorthMetres);
        page.Find(".tie-distance").Input("20 m");
        page.Find(".tying").Submit();
        var circle = map.Ties.Single(tie => tie.Thing == "lost");
        Assert.All(circle.Line, at => Assert.Equal(20, at.DistanceMetresTo(lime), 6));
        Assert.Equal(circle.Line[0].EastMetres, circle.Line[^1].EastMetres, 6);
    }

    [Fact]
    public async Task A_picture_is_laid_beneath_the_plan_by_points_of_it_and_their_places_and_can_be_hidden_and_taken_away()
    {
        var page = await OpenAsync();
        Press(page, "Picture");
        await page.Find(".backdrop input[type=file]").ChangeAsync(new ChangeEventArgs());
        var first = map.Laid!;
        foreach (var (across, down, to) in new[] { (0, 0, new Position(95, 45)), (200, 0, new Position(95, 145)) })
        {
            var at = hand.Laying!.Picture!.Fit.At(across + 1e-6, down + 1e-6);
            Tap(page, at.EastMetres, at.NorthMetres);
            Assert.Contains("Now tap the place", page.Find(".backdrop .points-said").TextContent, StringComparison.Ordinal);
            Tap(page, to.EastMetres, to.NorthMetres);
        }

        Assert.Contains("Laid by 2 points", page.Find(".backdrop .points-said").TextContent, StringComparison.Ordinal);
        Assert.NotEqual(first, map.Laid);
        Assert.Equal(0.5, map.Laid!.Imaginary, 3);
        await page.Find(".backdrop .tick input").ChangeAsync(new ChangeEventArgs { Value = false });
        Assert.Null(map.Laid);
        Press(page, "Take it away");
        Assert.Empty(page.FindAll(".backdrop"));
        Assert.DoesNotContain(log.Document.Entries, entry => entry.Id.Writer == "page-a");
    }

    [Fact]
    public async Task The_device_s_position_is_a_hint_on_the_plan_where_the_datum_is_known_and_else_the_page_says_why_not()
    {
        var page = await OpenAsync();
        var datum = log.History.Facts.Property!;
        await log.NoteAsync(datum with { Latitude = 40, Longitude = -105 });
        page.Render(with => with.Add(p => p.History, log.History));
        whereabouts.Says = new Fix(40.001, -104.999, 8);
        await page.Find(".ground-here").ClickAsync();
        Assert.Equal((8.0, 85.394, 111.035), (map.Device!.Value.AccuracyMetres, Math.Round(map.Device.Value.At.EastMetres, 3), Math.Round(map.Device.Value.At.NorthMetres, 3)));
        Assert.Contains("to 26.2 ft: a hint", page.Find(".ground-here-said").TextContent, StringComparison.Ordinal);
        whereabouts.Says = new Problem("this device", "the browser may not tell it", "Allow it");
        await page.Find(".ground-here").ClickAsync();
        Assert.Contains("the browser may not tell it", page.Find(".ground-here-said").TextContent, StringComparison.Ordinal);
    }

    private async Task LoadAsync()
    {
        if (log.IsEmpty)
        {
            await log.OpenDeviceAsync();
            await log.TakeInAsync("Served log", demo);
        }
    }

    private async Task<IRenderedComponent<GroundPlace>> OpenAsync(Answers? answers = null)
    {
        await LoadAsync();
        IRenderedComponent<GroundPlace> page = null!;
        page = Render<GroundPlace>(with => with
            .Add(p => p.History, log.History)
            .Add(p => p.Opened, answers is null ? null : new OpenedLog(answers, []))
            .Add(p => p.Hand, hand)
            .Add(p => p.Looking, looking)
            .Add(p => p.TakesNotes, true)
            .Add(p => p.Note, noted.Add)
            .Add(p => p.Question, (string question) => asked = question)
            .Add(p => p.SaveCopy, () => { })
            .Add(p => p.Store, async write =>
            {
                var stored = await log.NoteAsync(write);
                page.Render(again => again.Add(p => p.History, log.History));
                return stored.Problem;
            }));
        return page;
    }

    private void Tap(IRenderedComponent<GroundPlace> page, double eastMetres, double northMetres)
    {
        map.Tap(eastMetres, northMetres);
        page.Render();
    }

    private static void Press(IRenderedComponent<GroundPlace> page, string words) =>
        page.FindAll("button").First(button => button.TextContent.Trim() == words).Click();
}
