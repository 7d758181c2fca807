using Underturf.FieldApp;
using Underturf.Quantities;

namespace Underturf.Browser;

/// <summary>Pictures beneath plans, kept in memory: every one that is chosen has 400 by 300 pixels.</summary>
internal sealed class MemoryBackdrops : IBackdropShelf
{
    private Backdrop? kept;

    public Problem? Full { get; set; }

    public Task<Outcome<(int Width, int Height)>> TakeAsync(string property, string input) => Task.FromResult<Outcome<(int Width, int Height)>>(Full is { } full ? full : (400, 300));

    public Task<(Backdrop Picture, string Address)?> FindAsync(string property, string name) => Task.FromResult<(Backdrop, string)?>(kept is null ? null : (Backdrop.Read(kept.Write())!, "blob:picture"));

    public Task<Problem?> KeepAsync(string property, Backdrop picture)
    {
        kept = picture;
        return Task.FromResult<Problem?>(null);
    }

    public Task ForgetAsync(string property)
    {
        kept = null;
        return Task.CompletedTask;
    }
}
