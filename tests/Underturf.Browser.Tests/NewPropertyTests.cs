using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>The page at its beginning: a log of nothing, one that is damaged, and a long one that somebody does not wait for.</summary>
public sealed class NewPropertyTests : BunitContext
{
    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    private readonly MemoryDevice device = new();
    private readonly SilentDemo notebook = new();

    public NewPropertyTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<INotebook>(notebook);
        Services.AddSingleton<ILateRooms>(new WholePage());
        Services.AddSingleton<IDevice>(device);
        Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
        Services.AddSingleton<IGroundMap>(new RecordingMap());
        Services.AddSingleton<IBackdropShelf>(new MemoryBackdrops());
        Services.AddSingleton<IWhereabouts>(new FixedWhereabouts());
    }

    [Fact]
    public async Task An_empty_log_asks_for_the_name_of_the_property_and_then_for_the_first_thing()
    {
        var server = new MemoryServer(ReadOnlyMemory<byte>.Empty);
        var page = Open(server);
        await page.WaitForElementAsync(".begin");
        Assert.Empty(page.FindAll(".problems"));
        await page.Find(".begin form").SubmitAsync();
        Assert.Contains("Write what people call it", page.Find(".begin .missing").TextContent, StringComparison.Ordinal);
        await page.Find(".begin-name").InputAsync("Rose garden");
        await page.Find(".begin form").SubmitAsync();
        await page.WaitForElementAsync("[data-home=HasAll]");
        Assert.Equal("Rose garden", page.Find(".property-name").TextContent);
        Assert.Equal("Rose garden", Assert.IsType<PropertyFact>(LogDocument.Read(server.Log).Entries.Single().Fact).Name);
        Assert.Single(page.FindAll(".note-begin"));
        await page.WaitForElementAsync(".place-first");
        await page.Find(".place-first").ClickAsync(new MouseEventArgs());
        Assert.Single(page.FindAll(".placing"));
    }

    [Fact]
    public async Task The_stations_of_a_new_controller_are_noted_by_their_terminals_at_one_go()
    {
        var server = new MemoryServer(ReadOnlyMemory<byte>.Empty);
        var page = Open(server);
        await page.WaitForElementAsync(".begin");
        await page.Find(".begin-name").InputAsync("Rose garden");
        await page.Find(".begin form").SubmitAsync();
        await page.WaitForElementAsync(".note-begin");
        await page.FindAll(".place-name").Single(name => name.TextContent == "Stations").ClickAsync(new MouseEventArgs());
        await page.Find(".stations .place-first").ClickAsync(new MouseEventArgs());
        await page.FindAll(".placing button").First(b => b.TextContent == "Take the middle").ClickAsync(new MouseEventArgs());
        await page.FindAll(".placing label.field").First(label => label.TextContent.Contains("Station terminals", StringComparison.Ordinal)).QuerySelector("input")!.InputAsync("6");
        await page.Find("form.placing").SubmitAsync();
        await page.FindAll(".place-name").Single(name => name.TextContent == "Stations").ClickAsync(new MouseEventArgs());
        await page.Find(".terminals-all").ClickAsync(new MouseEventArgs());
        await page.FindAll(".terminals .choice")[3].ClickAsync(new MouseEventArgs());
        Assert.Equal("Store 5 stations", page.Find(".terminals-store").TextContent);
        await page.Find(".terminals-store").ClickAsync(new MouseEventArgs());
        Assert.Equal(["1", "2", "3", "5", "6"], page.FindAll(".station-number").Select(number => number.TextContent));
        Assert.Equal("4", page.Find(".terminals .choice").TextContent);
        await page.FindAll("button").First(b => b.TextContent == "Undo").ClickAsync(new MouseEventArgs());
        Assert.Empty(page.FindAll(".station"));
    }

    [Fact]
    public async Task A_server_whose_log_is_damaged_is_not_said_to_have_every_note_and_nothing_more()
    {
        var lines = System.Text.Encoding.UTF8.GetString(demo).TrimEnd('\n').Split('\n');
        lines[3] = lines[3][..^20];
        var page = Open(new MemoryServer(System.Text.Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n")));
        await page.WaitForElementAsync("[data-home=HasAll]");
        Assert.StartsWith("log damaged in", page.Find(".home-state").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Reading_a_long_log_can_be_cancelled_and_what_would_be_worked_out_waits_until_it_is_asked_for()
    {
        var before = new DeviceLog(device);
        await before.OpenDeviceAsync();
        await before.TakeInAsync(DeviceLog.Served, demo);
        await before.NoteAllAsync([.. Enumerable.Range(0, 1_500).Select(i => (Func<string, Fact>)(_ => Ohms(i)))]);
        device.Turns = 1;
        var page = Open(new MemoryServer(before.Document.ToBytes().ToArray()));
        await page.WaitForElementAsync(".cancel");
        Assert.Contains("Reading the rest", page.Find(".progress").TextContent, StringComparison.Ordinal);
        await page.Find(".cancel").ClickAsync(new MouseEventArgs());
        Assert.Single(page.FindAll("[data-state=stopped]"));
        device.OtherPage.SetResult();
        await page.WaitForElementAsync("[data-home=HasAll]");
        Assert.Equal((0, 1), (notebook.Thought, page.FindAll("[data-state=stopped]").Count));
        await page.Find(".again").ClickAsync(new MouseEventArgs());
        await page.WaitForElementAsync("[data-state=ready]");
        Assert.Equal(1, notebook.Thought);
    }

    private IRenderedComponent<NotebookPage> Open(MemoryServer server)
    {
        Services.AddSingleton<IHomeServer>(server);
        return Render<NotebookPage>();
    }

    private static ReadingFact Ohms(int i) => new() { How = "station ohms", Stations = ["s1"], Value = Shown.Parse($"{20 + (i % 9)} ohm").Value };

    private sealed class SilentDemo : SilentNotebook;
}
