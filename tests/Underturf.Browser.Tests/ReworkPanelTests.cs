using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;
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

    [Fact]
    public async Task What_was_noted_elsewhere_meanwhile_is_planned_for_when_one_comes_back()
    {
        var page = await OpenAsync();
        await GoAsync(page, "Now");
        await page.Find(".note-begin").ClickAsync(new MouseEventArgs());
        await page.Find(".kind[data-kind=Words]").ClickAsync(new MouseEventArgs());
        await page.Find("form.note textarea").InputAsync("rain");
        await page.Find("form.note input[autocomplete=name]").InputAsync("Jory");
        await page.Find("form.note").SubmitAsync();
        Assert.Equal(1, notebook.Planned);
        await GoAsync(page, "Stations");
        Assert.Equal(2, notebook.Planned);
        await GoAsync(page, "Now");
        await GoAsync(page, "Stations");
        Assert.Equal(2, notebook.Planned);
    }

    private static Task GoAsync(IRenderedComponent<NotebookPage> page, string place) =>
        page.FindAll(".place-name").Single(name => name.TextContent == place).ClickAsync(new MouseEventArgs());

    private async Task<IRenderedComponent<NotebookPage>> OpenAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<INotebook>(notebook);
        Services.AddSingleton<ILateRooms>(new WholePage());
        Services.AddSingleton<IHomeServer>(new MemoryServer(ground.Log.ToBytes().ToArray()));
        Services.AddSingleton<IDevice>(new MemoryDevice());
        Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
        Services.AddSingleton<IBackdropShelf>(new MemoryBackdrops());
        Services.AddSingleton<IWhereabouts>(new FixedWhereabouts());
        var page = Render<NotebookPage>();
        page.WaitForElement("[data-state=ready]");
        await GoAsync(page, "Stations");
        await page.Find(".rework-begin").ClickAsync(new MouseEventArgs());
        return page;
    }

    /// <summary>Plans truly and thinks nothing of the rest.</summary>
    private sealed class PlanningNotebook : SilentNotebook
    {
        public int Planned { get; private set; }

        public override Task<Outcome<Planned<ReworkAnswer>>> PlanReworkAsync(ReadOnlyMemory<byte> log, Waiting waiting)
        {
            Planned++;
            return Task.FromResult<Outcome<Planned<ReworkAnswer>>>(FieldApp.Planned.Of(ReworkPlan.Of(Notebook.Open(log, PracticeBook.Default))));
        }
    }
}
