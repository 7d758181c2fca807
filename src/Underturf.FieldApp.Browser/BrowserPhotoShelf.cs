using System.Runtime.InteropServices.JavaScript;
using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp.Browser;

/// <summary>The photos of the device as a browser keeps them.</summary>
internal sealed class BrowserPhotoShelf : IPhotoShelf
{
    public async Task<Outcome<TakenPhoto>> TakeAsync(string input)
    {
        await PhotoCalls.ReadyAsync();
        return Taken(await PhotoCalls.TakeAsync(input));
    }

    public async Task<Outcome<TakenPhoto>> TakeAgainAsync() => Taken(await PhotoCalls.TakeAgainAsync());

    public void HandOutInHand() => PhotoCalls.HandOutInHand();

    public async Task<string?> SmallAsync(string hash)
    {
        await PhotoCalls.ReadyAsync();
        return await PhotoCalls.SmallAsync(hash);
    }

    public Task ShowAsync(PhotoFact photo, string words) => PhotoCalls.ShowAsync(photo.Hash, PhotoFile.NameOf(photo).Split('/')[^1], words);

    public async Task<IReadOnlyList<PhotoFact>> UnsavedAsync(IReadOnlyList<PhotoFact> photos)
    {
        await PhotoCalls.ReadyAsync();
        var unsaved = (await PhotoCalls.UnsavedAsync([.. photos.Select(photo => photo.Hash)])).Split(' ').ToHashSet();
        return [.. photos.Where(photo => unsaved.Contains(photo.Hash))];
    }

    public async Task<Problem?> ForgetAsync(IReadOnlyList<PhotoFact> photos)
    {
        await PhotoCalls.ReadyAsync();
        using var said = await PhotoCalls.ForgetAsync([.. photos.Select(photo => photo.Hash)]);
        return said.GetPropertyAsString("failed") is { } failed ? PhotoTrouble.Of(failed) : null;
    }

    public async Task<Outcome<int>> HandOutPackAsync(string name, ReadOnlyMemory<byte> log, IReadOnlyList<PhotoFact> photos)
    {
        await PhotoCalls.ReadyAsync();
        using var said = await PhotoCalls.HandOutPackAsync($"{name}.zip", $"{name}.jsonl", log.ToArray(), [.. photos.Select(PhotoFile.NameOf)], [.. photos.Select(photo => photo.Hash)]);
        return said.GetPropertyAsString("failed") is { } failed ? PhotoTrouble.Of(failed) : said.GetPropertyAsInt32("packed");
    }

    public async Task<Outcome<ReadOnlyMemory<byte>>> TakeInPackAsync(string input)
    {
        await PhotoCalls.ReadyAsync();
        using var said = await PhotoCalls.TakeInPackAsync(input);
        return said.GetPropertyAsString("failed") is { } failed ? PhotoTrouble.Of(failed) : (ReadOnlyMemory<byte>)said.GetPropertyAsByteArray("log")!;
    }

    private static Outcome<TakenPhoto> Taken(JSObject answer)
    {
        using var said = answer;
        return said.GetPropertyAsString("failed") is { } failed ? PhotoTrouble.Of(failed)
            : PictureHead.Read(said.GetPropertyAsByteArray("head")) is { } head ? new TakenPhoto(said.GetPropertyAsString("hash")!, head.Media, head.Width, head.Height)
            : new Problem("this file", "is no picture of a form that is known, so it was not noted", $"Choose one of: {string.Join(", ", PhotoFile.MediaTypes)}");
    }
}
