using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;

namespace Underturf.Browser;

/// <summary>Several logs on one device: opened, copied, taken off.</summary>
public sealed class KeptLogsTests : BunitContext
{
    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    private readonly MemoryDevice device = new();

    /// <summary>The page as it opens on the device.</summary>
    private async Task<DeviceLog> OpenAsync()
    {
        var log = new DeviceLog(device);
        await log.OpenDeviceAsync();
        return log;
    }

    private async Task<DeviceLog> BothAsync()
    {
        var log = await OpenAsync();
        await log.TakeInAsync("garden.jsonl", demo);
        await log.NoteAsync(new ToldFact { Who = "Jory", Text = "rain" });
        await log.TakeInAsync("orchard.jsonl", Other());
        return log;
    }

    /// <summary>A property that is invented here, with one note.</summary>
    internal static byte[] Other() =>
        [.. Pen.Seal("orchard", "maren", null, HybridTime.Next(default, 1), new PropertyFact { Name = "Orchard", Zone = "Etc/UTC" }).Value.Line.Span, (byte)'\n'];

    [Fact]
    public async Task Each_log_is_named_and_another_one_is_opened_with_all_its_notes()
    {
        var log = await BothAsync();
        Assert.Equal(["Memorial garden", "Orchard"], log.KeptHere.Select(kept => kept.Called));
        await log.OpenKeptAsync("memorial-garden");
        Assert.Equal(("Memorial garden", 1L), (log.Name, log.NotBackedUp));
        var again = await OpenAsync();
        Assert.Equal("Memorial garden", again.Name);
    }

    [Fact]
    public async Task A_copy_of_a_log_that_is_not_open_backs_up_its_notes_and_leaves_the_open_one_open()
    {
        var log = await BothAsync();
        Assert.Equal(1, (await log.AtStakeAsync("memorial-garden")).Value.Notes);
        Assert.Null(await log.HandOutAsync("memorial-garden"));
        Assert.Equal(0, (await log.AtStakeAsync("memorial-garden")).Value.Notes);
        Assert.Equal("memorial-garden.jsonl", device.HandedOut[^1].Name);
        var again = await OpenAsync();
        Assert.Equal("Orchard", again.Name);
    }

    [Fact]
    public async Task What_is_taken_off_is_gone_and_taken_in_again_it_is_written_under_another_name()
    {
        var log = await BothAsync();
        Assert.Null(await log.RemoveAsync("memorial-garden"));
        Assert.Equal(["Orchard"], log.KeptHere.Select(kept => kept.Called));
        await log.TakeInAsync("garden.jsonl", demo);
        Assert.Equal(LogDocument.Read(demo).Entries.Count, log.Document.Entries.Count);
        var noted = await log.NoteAsync(new ToldFact { Who = "Jory", Text = "sun" });
        Assert.NotEqual("page-a", noted.Value.Id.Writer);
        Assert.Equal(1, log.NotBackedUp);
        var again = await OpenAsync();
        Assert.Equal(noted.Value.Id.Writer, (await again.NoteAsync(new ToldFact { Who = "Jory", Text = "wind" })).Value.Id.Writer);
    }

    [Fact]
    public async Task The_log_that_is_open_can_be_taken_off_too_and_none_is_open_then()
    {
        var log = await BothAsync();
        Assert.Null(await log.RemoveAsync("orchard"));
        Assert.True(log.IsEmpty);
        Assert.True((await OpenAsync()).IsEmpty);
        await log.OpenKeptAsync("memorial-garden");
        Assert.Equal("Memorial garden", (await OpenAsync()).Name);
    }

    [Fact]
    public async Task Its_photos_go_with_a_log_but_not_those_that_another_one_has()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        var (photos, log) = (new MemoryShelf(), await BothAsync());
        Services.AddSingleton<IPhotoShelf>(photos);
        var own = (await photos.TakeAsync("camera")).Value;
        photos.Next = own with { Hash = new string('a', 64) };
        var shared = (await photos.TakeAsync("camera")).Value;
        await log.NoteAsync(shared.ToFact("b1"));
        await log.OpenKeptAsync("memorial-garden");
        await log.NoteAsync(own.ToFact("b1"));
        await log.NoteAsync(shared.ToFact("b1"));
        var shelf = Render<LogShelf>(p => p.Add(s => s.Log, log));
        await shelf.Find("[data-log=memorial-garden] .shelf-remove").ClickAsync(new());
        Assert.Contains("3 notes, 1 photo", shelf.Find(".shelf-warns").TextContent, StringComparison.Ordinal);
        await shelf.Find(".shelf-gone").ClickAsync(new());
        Assert.Null(await photos.SmallAsync(own.Hash));
        Assert.NotNull(await photos.SmallAsync(shared.Hash));
    }

    [Fact]
    public async Task Before_a_log_is_taken_off_it_is_said_what_would_be_lost()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<IPhotoShelf>(new MemoryShelf());
        var log = await BothAsync();
        var shelf = Render<LogShelf>(p => p.Add(s => s.Log, log));
        await shelf.Find("[data-log=memorial-garden] .shelf-remove").ClickAsync(new());
        Assert.Contains("lost then: 1 note.", shelf.Find(".shelf-warns").TextContent, StringComparison.Ordinal);
        await shelf.Find(".shelf-keep").ClickAsync(new());
        Assert.Equal(2, log.KeptHere.Count);
        await shelf.Find("[data-log=memorial-garden] .shelf-copy").ClickAsync(new());
        await shelf.Find("[data-log=memorial-garden] .shelf-remove").ClickAsync(new());
        Assert.Contains("Every note", shelf.Find(".shelf-warns").TextContent, StringComparison.Ordinal);
        await shelf.Find(".shelf-gone").ClickAsync(new());
        Assert.Equal(["orchard"], shelf.FindAll(".shelf-log").Select(line => line.GetAttribute("data-log")));
    }
}
