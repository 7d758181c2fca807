using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Planning.Day;
using Underturf.Planning.Rework;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Tests.Planning;

namespace Underturf.Browser;

/// <summary>Giving valves their own stations on the page: one step at a time, one tap a step.</summary>
public sealed class ReworkPanelTests : BunitContext
{
    private readonly PlanningNotebook notebook = new();
    private readonly SharedGround ground = new(40, abandoned: false);

    [Fact]
    public async Task One_tap_a_step_leads_to_a_station_for_every_valve()
    {
        var page = await OpenAsync();
        Assert.Contains("1 of 1 valves", page.Find(".rework-said").TextContent, StringComparison.Ordinal);
        Assert.Contains("terminal 3", page.Find(".rework-valve h2").TextContent, StringComparison.Ordinal);
        for (var i = 0; i < 5; i++)
        {
            await page.Find(".rework-passed").ClickAsync(new MouseEventArgs());
        }

        Assert.Empty(page.FindAll(".rework-next"));
        Assert.Contains("Every valve has its station", page.Find(".rework-said").TextContent, StringComparison.Ordinal);
        Assert.Contains("1 is 3 for side bed", page.Find(".rework-numbers").TextContent, StringComparison.Ordinal);
        Assert.Equal(6, notebook.Planned);
    }

    [Fact]
    public async Task What_is_not_as_said_is_noted_and_another_way_is_planned()
    {
        var page = await OpenAsync();
        Assert.Contains("loose 1", page.Find(".rework-next .action").TextContent, StringComparison.Ordinal);
        await page.Find(".rework-failed").ClickAsync(new MouseEventArgs());
        Assert.Contains("and 1 more", page.Find(".stored").TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("loose 1", page.Find(".rework-next").TextContent, StringComparison.Ordinal);
        await page.Find(".stored button").ClickAsync(new MouseEventArgs());
        Assert.Contains("loose 1", page.Find(".rework-next .action").TextContent, StringComparison.Ordinal);
    }

    private async Task<IRenderedComponent<NotebookPage>> OpenAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<INotebook>(notebook);
        Services.AddSingleton<IHomeServer>(new MemoryServer(ground.Log.ToBytes().ToArray()));
        Services.AddSingleton<IDevice>(new MemoryDevice());
        Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
        Services.AddSingleton<IBackdropShelf>(new MemoryBackdrops());
        Services.AddSingleton<IWhereabouts>(new FixedWhereabouts());
        var page = Render<NotebookPage>();
        page.WaitForElement("[data-state=ready]");
        await page.FindAll(".place-name").Single(name => name.TextContent == "Stations").ClickAsync(new MouseEventArgs());
        await page.Find(".rework-begin").ClickAsync(new MouseEventArgs());
        return page;
    }

    /// <summary>Plans truly and thinks nothing of the rest.</summary>
    private sealed class PlanningNotebook : INotebook
    {
        public int Planned { get; private set; }

        public Task<Outcome<OpenedLog>> OpenAsync(ReadOnlyMemory<byte> log, Waiting waiting) => Task.FromResult<Outcome<OpenedLog>>(new OpenedLog(new Answers("0.1.0", "1", [], []), []));

        public Task<Outcome<LocatedThing>> LocateAsync(ReadOnlyMemory<byte> log, LocateAsk ask, Waiting waiting) => throw new InvalidOperationException("No test here looks for anything.");

        public Task<Outcome<IReadOnlyList<MadePaper>>> MakePapersAsync(ReadOnlyMemory<byte> log, Waiting waiting) => throw new InvalidOperationException("No test here makes papers.");

        public Task<Outcome<PlannedDay>> PlanDayAsync(ReadOnlyMemory<byte> log, DayAsk ask, Waiting waiting) => throw new InvalidOperationException("No test here orders a day.");

        public Task<Outcome<PlannedRepair>> PlanRepairAsync(ReadOnlyMemory<byte> log, string thing, Waiting waiting) => throw new InvalidOperationException("No test here plans a repair.");

        public Task<Outcome<PlannedRework>> PlanReworkAsync(ReadOnlyMemory<byte> log, Waiting waiting)
        {
            Planned++;
            return Task.FromResult<Outcome<PlannedRework>>(PlannedRework.Of(ReworkPlan.Of(Notebook.Open(log, PracticeBook.Default))));
        }

        public Task<Outcome<NamingAnswer>> NameAsync(ReadOnlyMemory<byte> log, NamingAsk ask, Waiting waiting) => throw new InvalidOperationException("No test here names conductors.");
    }
}
