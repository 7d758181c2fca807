using Underturf.Quantities;

namespace Underturf.FieldApp.Browser;

/// <summary>What comes after the page in a browser. What could not be had is asked for again the next time.</summary>
internal sealed class BrowserLateRooms : ILateRooms
{
    private Task<Problem?>? book;
    private Task<Problem?>? all;

    public Task<Problem?> BookAsync() => book = Again(book) ? TakeAsync("book") : book!;

    public Task<Problem?> AllAsync() => all = Again(all) ? TakeAsync("thinking") : all!;

    private static bool Again(Task<Problem?>? before) => before is null or { IsCompletedSuccessfully: true, Result: not null };

    private static async Task<Problem?> TakeAsync(string group) =>
        await LateRooms.TakeAsync(group) is { } failed
            ? new Problem("this page", $"is not whole yet: the rest of it could not be fetched ({failed})", "Notes are kept meanwhile. Open the page again where the server can be reached")
            : null;
}
