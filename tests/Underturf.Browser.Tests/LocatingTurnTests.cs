using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Planning.Day;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Browser;

/// <summary>When the page asks where something lies: once the questions are worked out, only where a place shows it, and anew after each note.</summary>
public sealed class LocatingTurnTests : BunitContext
{
    private static readonly HiddenName Begun = new("s14/valve 1", "valve of station 14", "valve", "s14", 1, DateTimeOffset.UnixEpoch);

    private readonly AskedNotebook notebook = new();

    [Fact]
    public async Task Now_says_where_to_look_for_what_was_noted_about_last()
    {
        notebook.Hidden = [new("s3/valve 1", "valve of station 3", "valve", "s3", 1, null), Begun];
        var page = await OpenAsync();
        Assert.Equal([Begun.Id], notebook.Asked.Select(ask => ask.Thing));
        var look = page.Find(".look-first");
        Assert.Contains("6 ft east of box 6", look.TextContent, StringComparison.Ordinal);
        Assert.Contains("Here 6 min: 31 %", look.TextContent, StringComparison.Ordinal);
        Assert.Contains("1 more that nobody has found. Ground lists it.", look.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_nobody_has_begun_to_look_nothing_is_worked_out_and_where_all_is_found_nothing_is_said()
    {
        notebook.Hidden = [Begun with { LastNoted = null }];
        var page = await OpenAsync();
        Assert.Empty(notebook.Asked);
        Assert.Contains("1 that nobody has found", page.Find(".look-first").TextContent, StringComparison.Ordinal);
        notebook.Hidden = [];
        await AgainAsync(page);
        Assert.Empty(page.FindAll(".look-first"));
    }

    [Fact]
    public async Task Ground_goes_on_with_what_Now_knows_and_no_other_place_asks()
    {
        notebook.Hidden = [Begun];
        var page = await OpenAsync();
        await page.Find(".look-go").ClickAsync(new MouseEventArgs());
        Assert.Contains("Here 6 min: 31 %", page.Find(".stop").TextContent, StringComparison.Ordinal);
        Assert.Single(notebook.Asked);
        await GoAsync(page, "Stations");
        await AgainAsync(page);
        Assert.Single(notebook.Asked);
        await GoAsync(page, "Ground");
        Assert.Equal(2, notebook.Asked.Count);
    }

    [Fact]
    public async Task A_stored_search_has_it_worked_out_anew_from_where_one_stands_after_the_questions()
    {
        notebook.Hidden = [Begun];
        var page = await OpenAsync();
        await page.Find(".look-go").ClickAsync(new MouseEventArgs());
        await page.Find(".seek-nothing").ClickAsync(new MouseEventArgs());
        Assert.Equal("6", page.Find("[data-way='probe rod']").GetAttribute("value"));
        await page.Find("form.note").SubmitAsync();
        Assert.Contains("probe rod, 6 min: nothing found", page.Find(".stored").TextContent, StringComparison.Ordinal);
        Assert.Equal((2, 2), (notebook.Thought, notebook.Asked.Count));
        Assert.Equal(new LocateAsk(Begun.Id, new Position(112, -25)), notebook.Asked[^1]);
    }

    [Fact]
    public async Task Papers_go_before_and_it_is_asked_again_once_they_are_made()
    {
        notebook.Hidden = [Begun];
        notebook.Slow = new TaskCompletionSource();
        var page = await OpenAsync();
        await GoAsync(page, "Papers");
        await page.FindAll("button").Single(button => button.TextContent == "Make the papers").ClickAsync(new MouseEventArgs());
        Assert.True(notebook.GaveUp);
        notebook.Slow = null;
        await GoAsync(page, "Now");
        Assert.Equal(2, notebook.Asked.Count);
        Assert.Contains("31 %", page.Find(".look-first").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_order_of_the_day_goes_before_while_it_is_open()
    {
        notebook.Hidden = [Begun];
        var page = await OpenAsync();
        await page.Find(".day-begin").ClickAsync(new MouseEventArgs());
        await AgainAsync(page);
        Assert.Equal((2, 2, 1), (notebook.Thought, notebook.Ordered, notebook.Asked.Count));
        await page.Find(".day-close").ClickAsync(new MouseEventArgs());
        Assert.Equal(2, notebook.Asked.Count);
    }

    private async Task<IRenderedComponent<NotebookPage>> OpenAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<INotebook>(notebook);
        Services.AddSingleton<ILateRooms>(new WholePage());
        Services.AddSingleton<IHomeServer>(new MemoryServer(await File.ReadAllBytesAsync(Checkout.DemoLog)));
        Services.AddSingleton<IDevice>(new MemoryDevice());
        Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
        Services.AddSingleton<IGroundMap>(new RecordingMap());
        Services.AddSingleton<IBackdropShelf>(new MemoryBackdrops());
        Services.AddSingleton<IWhereabouts>(new FixedWhereabouts());
        var page = Render<NotebookPage>();
        page.WaitForElement("[data-state=ready]");
        return page;
    }

    private static Task GoAsync(IRenderedComponent<NotebookPage> page, string place) =>
        page.FindAll(".place-name").Single(name => name.TextContent == place).ClickAsync(new MouseEventArgs());

    /// <summary>A note has everything thought about anew.</summary>
    private static async Task AgainAsync(IRenderedComponent<NotebookPage> page)
    {
        await page.Find(".note-begin").ClickAsync(new MouseEventArgs());
        await page.Find(".kind[data-kind=Words]").ClickAsync(new MouseEventArgs());
        await page.Find("form.note textarea").InputAsync("rain");
        await page.Find("form.note input[autocomplete=name]").InputAsync("Jory");
        await page.Find("form.note").SubmitAsync();
    }

    /// <summary>Answers at once what it is told to, and counts what it is asked.</summary>
    private sealed class AskedNotebook : SilentNotebook
    {
        private static readonly SearchStep Stop = new(new Position(112, -25), "6 ft east of box 6", 4, 1, [new SearchEffort("probe rod", "probe", 6, "")], 0.31);

        public IReadOnlyList<HiddenName> Hidden { get; set; } = [];

        /// <summary>Holds the answers back.</summary>
        public TaskCompletionSource? Slow { get; set; }

        public bool GaveUp { get; private set; }

        public List<LocateAsk> Asked { get; } = [];

        public int Ordered { get; private set; }

        protected override OpenedLog Found => base.Found with { Hidden = Hidden };

        public override Task<Outcome<PlannedDay>> PlanDayAsync(ReadOnlyMemory<byte> log, DayAsk ask, Waiting waiting)
        {
            Ordered++;
            return Task.FromResult<Outcome<PlannedDay>>(new Problem("the day", "is of no matter here", "Ask for something else"));
        }

        public override Task<Outcome<IReadOnlyList<MadePaper>>> MakePapersAsync(ReadOnlyMemory<byte> log, Waiting waiting) => Task.FromResult<Outcome<IReadOnlyList<MadePaper>>>(Array.Empty<MadePaper>());

        public override async Task<Outcome<LocatedThing>> LocateAsync(ReadOnlyMemory<byte> log, LocateAsk ask, Waiting waiting)
        {
            Asked.Add(ask);
            waiting.Cancellation.Register(() => GaveUp = true);
            await (Slow?.Task.WaitAsync(waiting.Cancellation) ?? Task.CompletedTask);
            var thing = new HiddenThing(ask.Thing, "valve", "valve of station 14", "s14", 0, [], [], []);
            return new LocatedThing(new LocationAnswer("0.1.0", "1", [thing], [], 0, new SearchRoute([Stop], 0.31, 1, 6, 200, 200), []), null);
        }
    }
}
