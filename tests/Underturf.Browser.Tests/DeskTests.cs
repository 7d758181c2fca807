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
