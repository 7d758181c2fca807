using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>The desk on a device in memory: a page that was killed, and the page that is opened after it.</summary>
public sealed class DeskTests : IDisposable
{
    private readonly MemoryDevice device = new();
    private readonly List<BunitContext> killed = [];

    public void Dispose() => killed.ForEach(context => context.Dispose());

    private IRenderedComponent<NotebookPage> Open()
    {
        var context = new BunitContext();
        killed.Add(context);
        context.JSInterop.Mode = JSRuntimeMode.Loose;
        context.Services.AddSingleton<INotebook>(new DemoNotebook());
        context.Services.AddSingleton<ILateRooms>(new WholePage());
        context.Services.AddSingleton<IHomeServer>(new MemoryServer(File.ReadAllBytes(Checkout.DemoLog)));
        context.Services.AddSingleton<IDevice>(device);
        context.Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
        context.Services.AddSingleton<IGroundMap>(new RecordingMap());
        context.Services.AddSingleton<IBackdropShelf>(new MemoryBackdrops());
        context.Services.AddSingleton<IWhereabouts>(new FixedWhereabouts());
        var page = context.Render<NotebookPage>();
        page.WaitForElement("[data-state=ready]");
        return page;
    }

    /// <summary>What the device keeps of its own.</summary>
    private IReadOnlyList<Entry> Kept() => Hand.Own(LogDocument.Read(device.ReadAsync("memorial-garden", 0).Result.Value.Bytes));

    private static Task GoAsync(IRenderedComponent<NotebookPage> page, string place) =>
        page.FindAll(".place-name").Single(name => name.TextContent == place).ClickAsync(new MouseEventArgs());

    [Fact]
    public async Task What_was_typed_and_not_stored_stands_there_again_after_the_page_was_killed()
    {
        var page = Open();
        await page.Find(".note-begin").ClickAsync(new MouseEventArgs());
        await page.Find("[data-kind=Words]").ClickAsync(new MouseEventArgs());
        await page.Find("textarea").InputAsync("The lamp trench was filled with rubble.");
        Assert.Equal("The lamp trench was filled with rubble.", Open().Find("textarea").GetAttribute("value"));
    }

    [Fact]
    public async Task A_sweep_goes_on_with_the_figure_that_was_not_stored_yet()
    {
        var page = Open();
        await GoAsync(page, "Stations");
        await page.Find(".sweep-begin").ClickAsync(new MouseEventArgs());
        await page.FindAll(".sweep-head ~ .sheet-foot button").First(b => b.TextContent == "Skip").ClickAsync(new MouseEventArgs());
        await page.Find(".pad-value").InputAsync("41.7");
        var again = Open();
        Assert.Equal("41.7", again.Find(".pad-value").GetAttribute("value"));
        Assert.Equal(page.Find(".sweep-station").TextContent, again.Find(".sweep-station").TextContent);
    }

    [Fact]
    public async Task A_page_that_is_killed_once_a_note_is_stored_does_not_bring_its_form_back()
    {
        var page = Open();
        await page.Find(".note-begin").ClickAsync(new MouseEventArgs());
        await page.Find("[data-kind=Words]").ClickAsync(new MouseEventArgs());
        await page.Find("textarea").InputAsync("The lamp trench was filled with rubble.");
        await page.FindAll("label.field").First(label => label.TextContent.Contains("Who says it", StringComparison.Ordinal)).QuerySelector("input")!.InputAsync("Jory");
        device.IsKilled = true;
        await page.Find("form.note").SubmitAsync();
        Assert.Single(Kept());
        Assert.Empty(Open().FindAll(".sheet"));
    }

    [Fact]
    public async Task A_page_that_is_killed_once_a_reading_of_a_sweep_is_stored_goes_on_at_the_next_station()
    {
        var page = Open();
        await GoAsync(page, "Stations");
        await page.Find(".sweep-begin").ClickAsync(new MouseEventArgs());
        var station = page.Find(".sweep-station").TextContent;
        await page.Find(".pad-value").InputAsync("41.7");
        device.IsKilled = true;
        await page.Find("form.sweep").SubmitAsync();
        Assert.Single(Kept());
        var again = Open();
        Assert.NotEqual(station, again.Find(".sweep-station").TextContent);
        Assert.Equal("", again.Find(".pad-value").GetAttribute("value"));
    }

    [Fact]
    public async Task A_sweep_that_is_taken_up_says_at_which_station_it_goes_on_and_can_begin_at_the_first()
    {
        var page = Open();
        await GoAsync(page, "Stations");
        await page.Find(".sweep-begin").ClickAsync(new MouseEventArgs());
        Assert.Empty(page.FindAll(".sweep-goes-on"));
        await page.FindAll("form.sweep button").First(b => b.TextContent == "Skip").ClickAsync(new MouseEventArgs());
        Assert.Empty(page.FindAll(".sweep-goes-on"));
        var again = Open();
        Assert.Equal("Goes on at station 2.", again.Find(".sweep-goes-on p").TextContent);
        await again.Find(".sweep-end").ClickAsync(new MouseEventArgs());
        await again.Find(".sweep-begin").ClickAsync(new MouseEventArgs());
        Assert.Equal("2", again.Find(".sweep-station").TextContent.Split(' ')[1]);
        await again.Find(".sweep-afresh").ClickAsync(new MouseEventArgs());
        Assert.Equal("1", again.Find(".sweep-station").TextContent.Split(' ')[1]);
        Assert.Empty(again.FindAll(".sweep-goes-on"));
    }

    [Fact]
    public async Task A_page_that_is_killed_once_an_end_or_a_tie_is_stored_begins_the_next_one()
    {
        var page = Open();
        await GoAsync(page, "Boxes");
        await page.Find(".box-line[data-box=b10]").ClickAsync(new MouseEventArgs());
        await page.Find(".end-begin").ClickAsync(new MouseEventArgs());
        await page.FindAll(".colours button").First(b => b.TextContent.Trim() == "purple").ClickAsync(new MouseEventArgs());
        await page.FindAll(".gauges button")[0].ClickAsync(new MouseEventArgs());
        device.IsKilled = true;
        await page.Find(".mate-none").ClickAsync(new MouseEventArgs());
        device.IsKilled = false;
        var next = Open();
        Assert.Empty(next.FindAll(".colours [aria-pressed=true]"));
        await GoAsync(next, "Ground");
        await next.Find(".ground-list [data-thing=b6]").ClickAsync(new MouseEventArgs());
        await next.FindAll(".ground-card button").First(b => b.TextContent == "Tie it").ClickAsync(new MouseEventArgs());
        await next.FindAll(".tying .choice")[^1].ClickAsync(new MouseEventArgs());
        await next.Find(".tie-distance").InputAsync("41.5");
        device.IsKilled = true;
        await next.Find("form.tying").SubmitAsync();
        Assert.Equal(2, Kept().Count);
        Assert.Single(Open().FindAll(".tying"));
        Assert.Empty(Open().FindAll(".tie-distance"));
    }

    [Fact]
    public void What_a_panel_has_stored_lies_no_longer_on_the_desk_and_the_rest_still_does()
    {
        var naming = new NamingDraft { People = 2, Round = "r", Value = "41", Marks = { ["e1"] = true } };
        var day = new DayDraft { IsOpen = true, Minutes = 90 };
        (day.TicketFor("v1").Number, day.TicketFor("v2").Number) = ("A-11", "A-12");
        var desk = new KeptDesk("garden", "Maren", "Now", false, null, null, BoxTask.Look, null) { Naming = naming, Day = day, LeftAs = "hole open", Told = "the gardener" };
        var round = desk.Without(new TouchFact { How = "test coil", Place = "b1", Put = [], Touched = [], Answered = [] });
        Assert.Equal((2, "r", "", 0), (round.Naming!.People, round.Naming.Round, round.Naming.Value, round.Naming.Marks.Count));
        var ticket = desk.Without(new LocateTicketFact { Id = "t", Places = ["v1"] });
        Assert.Equal((true, 90d, "v2"), (ticket.Day!.IsOpen, ticket.Day.Minutes, ticket.Day.Tickets.Single().Key));
        var left = desk.Without(new LeftAsFact { Place = "b1", State = "hole open" });
        Assert.Equal((null, null, "A-11"), (left.LeftAs, left.Told, left.Day!.Tickets["v1"].Number));
    }

    [Fact]
    public async Task A_picture_that_is_being_laid_waits_for_the_place_of_its_point()
    {
        Open();
        var laying = new BackdropHand { Picture = new Backdrop(400, 300, PictureFit.Upright(400, 300, new Position(0, 0), 0.5)) };
        laying.Take(new GroundTap(new Position(10, 20), 1), new Position(10, 20));
        var hand = new GroundHand();
        hand.Lay(laying);
        device.Desk = new KeptDesk("memorial-garden", null, "Ground", false, null, null, BoxTask.Look, null) { Ground = hand }.Write();
        Assert.Equal(laying.WaitingAt, KeptDesk.Read(device.Desk)!.Ground!.Laying!.WaitingAt);
    }

    [Fact]
    public async Task Each_place_and_form_and_what_one_comes_back_to_is_seen_from_its_head()
    {
        var page = Open();
        async Task ShowsHeadAsync(Func<Task> tap)
        {
            var before = device.Heads;
            await tap();
            Assert.Equal(before + 1, device.Heads);
        }

        await ShowsHeadAsync(() => GoAsync(page, "Stations"));
        await ShowsHeadAsync(() => GoAsync(page, "Stations"));
        await ShowsHeadAsync(() => page.Find(".sweep-begin").ClickAsync(new MouseEventArgs()));
        await ShowsHeadAsync(() => page.Find(".sweep-end").ClickAsync(new MouseEventArgs()));
        await ShowsHeadAsync(() => page.Find(".note-begin").ClickAsync(new MouseEventArgs()));
        await page.Find("[data-kind=Words]").ClickAsync(new MouseEventArgs());
        await page.Find("textarea").InputAsync("The lamp trench was filled with rubble.");
        await page.FindAll("label.field").First(label => label.TextContent.Contains("Who says it", StringComparison.Ordinal)).QuerySelector("input")!.InputAsync("Jory");
        await ShowsHeadAsync(() => page.Find("form.note").SubmitAsync());
    }

    [Fact]
    public async Task What_was_typed_for_one_log_stays_with_it_while_another_one_is_open()
    {
        var log = new DeviceLog(device);
        await log.OpenDeviceAsync();
        await log.TakeInAsync("orchard.jsonl", KeptLogsTests.Other());
        await log.TakeInAsync("garden.jsonl", File.ReadAllBytes(Checkout.DemoLog));
        var page = Open();
        await TypeAsync(page, "Rubble in the trench.");
        await page.Find("[data-log=orchard] .shelf-open").ClickAsync(new MouseEventArgs());
        await page.WaitForAssertionAsync(() => Assert.Equal("Orchard", page.Find(".property-name").TextContent));
        await TypeAsync(page, "A gate stands open.");
        var again = Open();
        await again.Find("[data-log=memorial-garden] .shelf-open").ClickAsync(new MouseEventArgs());
        await again.WaitForAssertionAsync(() => Assert.Equal("Memorial garden", again.Find(".property-name").TextContent));
        await again.Find(".note-begin").ClickAsync(new MouseEventArgs());
        Assert.Equal("Rubble in the trench.", again.Find("textarea").GetAttribute("value"));
    }

    /// <summary>Types words into a new note and puts the form away.</summary>
    private static async Task TypeAsync(IRenderedComponent<NotebookPage> page, string words)
    {
        await page.Find(".note-begin").ClickAsync(new MouseEventArgs());
        await page.Find("[data-kind=Words]").ClickAsync(new MouseEventArgs());
        await page.Find("textarea").InputAsync(words);
        await page.FindAll("button").First(b => b.TextContent == "Put away").ClickAsync(new MouseEventArgs());
    }

    [Fact]
    public async Task A_log_that_is_taken_off_while_it_is_open_leaves_an_empty_page()
    {
        var page = Open();
        await page.Find("[data-log=memorial-garden] .shelf-remove").ClickAsync(new MouseEventArgs());
        await page.Find(".shelf-gone").ClickAsync(new MouseEventArgs());
        Assert.Empty(page.FindAll(".shelf, .question, .note-begin"));
        Assert.NotEmpty(page.FindAll(".picker"));
    }

    [Fact]
    public async Task A_box_that_was_open_is_open_again_with_the_end_that_was_being_noted()
    {
        var page = Open();
        await GoAsync(page, "Boxes");
        await page.Find(".box-line[data-box=b10]").ClickAsync(new MouseEventArgs());
        await page.Find(".end-begin").ClickAsync(new MouseEventArgs());
        await page.FindAll(".colours button").First(b => b.TextContent.Trim() == "purple").ClickAsync(new MouseEventArgs());
        Assert.Equal("purple", Open().Find(".colours [aria-pressed=true]").TextContent.Trim());
    }

    [Fact]
    public async Task A_half_typed_tie_stands_there_again()
    {
        var page = Open();
        await GoAsync(page, "Ground");
        await page.Find(".ground-list [data-thing=b6]").ClickAsync(new MouseEventArgs());
        await page.FindAll(".ground-card button").First(b => b.TextContent == "Tie it").ClickAsync(new MouseEventArgs());
        await page.FindAll(".tying .choice")[^1].ClickAsync(new MouseEventArgs());
        await page.Find(".tie-distance").InputAsync("41.");
        var again = Open();
        Assert.Equal("41.", again.Find(".tie-distance").GetAttribute("value"));
        Assert.Equal(page.Find(".points-said strong").TextContent, again.Find(".points-said strong").TextContent);
    }

    [Fact]
    public async Task Corners_that_were_tapped_the_ticket_that_was_typed_and_what_was_carried_out_are_kept_too()
    {
        Open();
        var hand = new GroundHand();
        hand.Place(new PlacingDraft { Kind = "bed", Points = { new Position(1, 2), new Position(3, 4) } });
        var day = new DayDraft { IsOpen = true, At = "b4", Minutes = 90 };
        day.TicketFor("v1").Number = "A-11";
        device.Desk = new KeptDesk("memorial-garden", null, "Ground", false, null, null, BoxTask.Look, null) { Ground = hand, Day = day, Repair = "b10", Told = "the gardener" }.Write();
        var kept = KeptDesk.Read(device.Desk)!;
        Assert.Equal(hand.Placing!.Points, kept.Ground!.Placing!.Points);
        Assert.Equal(("b4", 90d, "A-11"), (kept.Day!.At, kept.Day.Minutes, kept.Day.Tickets["v1"].Number));
        var page = Open();
        Assert.NotEmpty(page.FindAll(".placing"));
        await page.FindAll(".placing button").First(b => b.TextContent == "Put away").ClickAsync(new MouseEventArgs());
        Assert.Null(KeptDesk.Read(device.Desk)!.Ground!.Placing);
    }

    [Fact]
    public async Task A_name_said_once_stands_on_the_notes_of_this_device_also_after_a_restart()
    {
        var page = Open();
        await page.Find(".note-begin").ClickAsync(new MouseEventArgs());
        await page.Find("[data-kind=Words]").ClickAsync(new MouseEventArgs());
        await page.Find(".signed-by").InputAsync("Maren");
        await page.FindAll("button").First(b => b.TextContent == "Put away").ClickAsync(new MouseEventArgs());
        var again = Open();
        await GoAsync(again, "Boxes");
        await again.Find(".box-line[data-box=b10]").ClickAsync(new MouseEventArgs());
        await again.Find(".rebuild-begin").ClickAsync(new MouseEventArgs());
        await again.Find(".step-store").ClickAsync(new MouseEventArgs());
        await again.Find(".backup").ClickAsync(new MouseEventArgs());
        Assert.Equal("Maren", Hand.Own(LogDocument.Read(device.HandedOut[^1].Bytes)).Single().Fact!.By);
    }

    [Fact]
    public void A_desk_of_another_build_that_cannot_be_read_is_left()
    {
        device.Desk = "{\"Place\":";
        Assert.Empty(Open().FindAll(".sheet"));
    }

    private sealed class DemoNotebook : SilentNotebook;
}
