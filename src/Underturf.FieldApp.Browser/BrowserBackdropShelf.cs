using Underturf.Quantities;

namespace Underturf.FieldApp.Browser;

/// <summary>The pictures beneath plans as a browser keeps them.</summary>
internal sealed class BrowserBackdropShelf : IBackdropShelf
{
    public async Task<Outcome<(int Width, int Height)>> TakeAsync(string property, string input)
    {
        await BackdropCalls.ReadyAsync();
        using var said = await BackdropCalls.TakeAsync(property, input);
        return said.GetPropertyAsString("failed") is { } failed ? PhotoTrouble.Of(failed) : (said.GetPropertyAsInt32("width"), said.GetPropertyAsInt32("height"));
    }

    public async Task<(Backdrop Picture, string Address)?> FindAsync(string property, string name)
    {
        await BackdropCalls.ReadyAsync();
        using var said = await BackdropCalls.FindAsync(property, name);
        return said.GetPropertyAsString("laid") is { } laid && Backdrop.Read(laid) is { } picture ? (picture, said.GetPropertyAsString("address")!) : null;
    }

    public async Task<Problem?> KeepAsync(string property, Backdrop picture)
    {
        using var said = await BackdropCalls.KeepAsync(property, picture.Write());
        return said.GetPropertyAsString("failed") is { } failed ? PhotoTrouble.Of(failed) : null;
    }

    public async Task ForgetAsync(string property)
    {
        using var said = await BackdropCalls.ForgetAsync(property);
    }
}
