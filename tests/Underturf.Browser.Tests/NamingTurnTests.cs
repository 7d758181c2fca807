using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Property.Practice;
using Underturf.Quantities;
using Underturf.Reasoning;

namespace Underturf.Browser;

/// <summary>The page turns to naming and away from it: one worker, the hand that names before the answers.</summary>
public sealed class NamingTurnTests : BunitContext
{
    private readonly CountingNotebook notebook = new();
    private readonly MemoryDevice device = new();

    private async Task<IRenderedComponent<NotebookPage>> OpenBoxAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<INotebook>(notebook);
        Services.AddSingleton<ILateRooms>(new WholePage());
        Services.AddSingleton<IHomeServer>(new MemoryServer(await File.ReadAllBytesAsync(Checkout.DemoLog)));
        Services.AddSingleton<IDevice>(device);
        Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
        Services.AddSingleton<IBackdropShelf>(new MemoryBackdrops());
        Services.AddSingleton<IWhereabouts>(new FixedWhereabouts());
        var page = Render<NotebookPage>();
        page.WaitForElement("[data-state=ready]");
        await page.FindAll(".place-name").Single(name => name.TextContent == "Boxes").ClickAsync(new MouseEventArgs());
        await page.Find(".box-line[data-box=b10]").ClickAsync(new MouseEventArgs());
        return page;
    }

    [Fact]
    public async Task A_round_that_is_stored_or_taken_back_has_the_next_one_worked_out_and_the_answers_only_once_naming_is_left()
    {
        var page = await OpenBoxAsync();
        await page.Find(".naming-begin").ClickAsync(new MouseEventArgs());
        Assert.Equal((1, 1), (notebook.Thought, notebook.Named.Count));
        await page.Find(".plans .plan").ClickAsync(new MouseEventArgs());
        Assert.NotNull(notebook.Named[^1].Plan);
        await page.Find(".fit-all").ClickAsync(new MouseEventArgs());
        Assert.Contains("and 3 more", page.Find(".stored").TextContent, StringComparison.Ordinal);
        await page.Find(".stored button").ClickAsync(new MouseEventArgs());
        Assert.Equal((1, 4), (notebook.Thought, notebook.Named.Count));
        Assert.NotEmpty(page.FindAll(".fit-all"));
        Assert.Contains("wait until", page.Find(".progress").TextContent, StringComparison.Ordinal);
        await page.Find(".naming-close").ClickAsync(new MouseEventArgs());
        Assert.Equal((2, 4), (notebook.Thought, notebook.Named.Count));
        page.WaitForElement("[data-state=ready]");
    }

    [Fact]
    public async Task A_place_that_is_left_while_naming_is_named_on_when_it_is_opened_again()
    {
        var page = await OpenBoxAsync();
        await page.Find(".naming-begin").ClickAsync(new MouseEventArgs());
        await page.FindAll(".place-name").Single(name => name.TextContent == "Papers").ClickAsync(new MouseEventArgs());
        await page.FindAll(".place-name").Single(name => name.TextContent == "Boxes").ClickAsync(new MouseEventArgs());
        Assert.Equal(["b10", "b10"], notebook.Named.Select(ask => ask.Place));
        Assert.NotEmpty(page.FindAll(".round"));
    }

    /// <summary>Names ends truly and thinks nothing of the rest.</summary>
    private sealed class CountingNotebook : SilentNotebook
    {
        public List<NamingAsk> Named { get; } = [];

        public override Task<Outcome<NamingAnswer>> NameAsync(ReadOnlyMemory<byte> log, NamingAsk ask, Waiting waiting)
        {
            Named.Add(ask);
            return Task.FromResult(Notebook.Open(log, PracticeBook.Default).Name(ask.Place, ask.ToCrew()));
        }
    }
}
