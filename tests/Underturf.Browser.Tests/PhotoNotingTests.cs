using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Underturf.FieldApp;
using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Browser;

/// <summary>Photos in the note sheet, without a browser: the photo comes first, and is in the log before anything is asked about it.</summary>
public sealed class PhotoNotingTests : BunitContext
{
    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    private readonly MemoryDevice device = new();
    private readonly MemoryShelf shelf = new();
    private readonly NoteDraft draft = new();
    private DeviceLog log = null!;

    private IReadOnlyList<Fact> Noted => [.. log.Document.Entries.Where(e => e.Id.Writer == "page-a").Select(e => e.Fact!)];

    private async Task<IRenderedComponent<NoteSheet>> OpenAsync()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton<IPhotoShelf>(shelf);
        log = new DeviceLog(device);
        await log.OpenDeviceAsync();
        await log.TakeInAsync("Served log", demo);
        return Render<NoteSheet>(p => p
            .Add(s => s.Draft, draft).Add(s => s.View, log.History.Now).Add(s => s.Store, facts => StoreAsync(facts[0])).Add(s => s.StoreAside, StoreAsync)
            .Add(s => s.Closed, EventCallback.Empty).Add(s => s.SaveCopy, EventCallback.Empty));
    }

    private async Task<Problem?> StoreAsync(Fact fact) => (await log.NoteAsync(fact)).Problem;

    private static Task TakeAsync(IRenderedComponent<NoteSheet> sheet) => sheet.Find(".photo-take input").ChangeAsync(new ChangeEventArgs());

    [Fact]
    public async Task A_photo_then_a_kind_then_a_number_make_a_photo_and_a_reading_that_has_it()
    {
        var sheet = await OpenAsync();
        Assert.True(sheet.Markup.IndexOf("photo-take", StringComparison.Ordinal) < sheet.Markup.IndexOf("data-kind", StringComparison.Ordinal));
        await TakeAsync(sheet);
        Assert.Equal((MemoryShelf.Hash, "image/jpeg", 4000), (((PhotoFact)Noted[0]).Hash, ((PhotoFact)Noted[0]).Media, ((PhotoFact)Noted[0]).Width));
        await sheet.Find("[data-kind=Reading]").ClickAsync();
        Assert.Equal($"blob:{MemoryShelf.Hash}", sheet.Find(".photo img").GetAttribute("src"));
        await sheet.FindAll(".choice").First(c => c.TextContent == "9").ClickAsync();
        await sheet.FindAll(".key").First(k => k.TextContent == "7").ClickAsync();
        await sheet.Find("form").SubmitAsync();
        Assert.Equal([MemoryShelf.Hash], Assert.IsType<ReadingFact>(Noted[1]).Photos);
        Assert.Equal(["s9"], PhotoAlbum.Of(log.History).All.Single().Things);
    }

    [Fact]
    public async Task A_photo_alone_is_given_its_place_and_words()
    {
        var sheet = await OpenAsync();
        Assert.Empty(sheet.FindAll("[data-kind=Photo]"));
        await TakeAsync(sheet);
        await sheet.Find("[data-kind=Photo]").ClickAsync();
        await sheet.FindAll(".choice").First(c => c.TextContent == "box 7").ClickAsync();
        await sheet.Find(".note > .field input").InputAsync("lid cracked");
        await sheet.Find("form").SubmitAsync();
        var photo = PhotoAlbum.Of(log.History).Of("b7").Single();
        Assert.Equal(("lid cracked", "b7", 4000), (photo.Fact.Caption, photo.Fact.Place, photo.Fact.Width));
        Assert.Empty(Noted[1].Photos);
    }

    [Fact]
    public async Task A_photo_that_the_device_refuses_stays_in_hand_to_be_kept_again_or_saved_as_a_file()
    {
        var sheet = await OpenAsync();
        shelf.Full = new Problem("this device", "has no room left, so the photo was not kept", "Save it as a file now");
        await TakeAsync(sheet);
        Assert.Contains("has no room left", sheet.Find(".photo-trouble").TextContent, StringComparison.Ordinal);
        Assert.Empty(Noted);
        await sheet.FindAll(".photo-trouble button").Single(b => b.TextContent == "Save it as a file").ClickAsync();
        Assert.True(shelf.HandedOut);
        shelf.Full = null;
        await sheet.FindAll(".photo-trouble button").Single(b => b.TextContent == "Keep it again").ClickAsync();
        Assert.Empty(sheet.FindAll(".photo-trouble"));
        Assert.IsType<PhotoFact>(Noted.Single());
    }

    [Fact]
    public async Task A_photo_whose_entry_was_refused_is_named_in_the_log_before_the_note_that_has_it()
    {
        var sheet = await OpenAsync();
        device.Full = new Problem("this device", "has no room left", "Free some");
        await TakeAsync(sheet);
        Assert.Contains("has no room left", sheet.Find(".not-stored").TextContent, StringComparison.Ordinal);
        device.Full = null;
        await sheet.Find("[data-kind=Words]").ClickAsync();
        await sheet.Find("textarea").InputAsync("a hiss under the lid");
        await sheet.FindAll(".note input")[0].InputAsync("the gardener");
        await sheet.Find("form").SubmitAsync();
        Assert.Equal([typeof(PhotoFact), typeof(ToldFact)], Noted.Select(fact => fact.GetType()));
    }

    [Fact]
    public async Task A_draft_with_a_photo_comes_back_after_the_page_was_killed()
    {
        var sheet = await OpenAsync();
        await TakeAsync(sheet);
        var kept = new KeptDesk("garden", null, "Now", true, draft, null, BoxTask.Look, null).Write();
        Assert.Equal(draft.Photos, KeptDesk.Read(kept)!.Note!.Photos);
        Assert.True(draft.Photos.Single().Noted);
    }
}
