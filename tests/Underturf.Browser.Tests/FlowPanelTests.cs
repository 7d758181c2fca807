using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;
using Underturf.Reasoning.Water;
using Underturf.Tests.Planning;

namespace Underturf.Browser;

/// <summary>What each station takes of the water, on the page.</summary>
public sealed class FlowPanelTests : BunitContext
{
    [Fact]
    public async Task Stations_show_what_each_takes_and_what_runs_with_everything_off()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<INotebook>(new FlowingNotebook());
        Services.AddSingleton<ILateRooms>(new WholePage());
        Services.AddSingleton<IHomeServer>(new MemoryServer(new SharedGround(40, abandoned: false).Log.ToBytes().ToArray()));
        Services.AddSingleton<IDevice>(new MemoryDevice());
        Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
        Services.AddSingleton<IBackdropShelf>(new MemoryBackdrops());
        Services.AddSingleton<IWhereabouts>(new FixedWhereabouts());
        var page = Render<NotebookPage>();
        page.WaitForElement("[data-state=ready]");
        await page.FindAll(".place-name").Single(name => name.TextContent == "Stations").ClickAsync(new MouseEventArgs());
        await page.Find(".flow-begin").ClickAsync(new MouseEventArgs());
        Assert.Contains("at rest", page.Find(".flow-supply").TextContent, StringComparison.Ordinal);
        Assert.Equal("nothing is known to run", page.Find(".flow-idle").TextContent);
        Assert.NotEmpty(page.FindAll(".flow-gives"));
        Assert.All(page.FindAll(".flow-gives"), line => Assert.Contains("at the outlets", line.TextContent, StringComparison.Ordinal));
        Assert.Contains("No pipe is noted", page.Find(".flow-unknown").TextContent, StringComparison.Ordinal);
        await page.Find(".flow-close").ClickAsync(new MouseEventArgs());
        Assert.NotEmpty(page.FindAll(".sweep-begin"));
    }

    /// <summary>Reckons truly and thinks nothing of the rest.</summary>
    private sealed class FlowingNotebook : SilentNotebook
    {
        public override Task<Outcome<FlowLines>> FlowAsync(ReadOnlyMemory<byte> log, Waiting waiting)
        {
            var notebook = Notebook.Open(log, PracticeBook.Default);
            return Task.FromResult<Outcome<FlowLines>>(FlowTelling.Of(notebook.Flow().Value, notebook.History.Facts.UsesUsUnits));
        }
    }
}
