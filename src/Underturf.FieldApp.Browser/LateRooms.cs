using System.Runtime.InteropServices.JavaScript;

namespace Underturf.FieldApp.Browser;

/// <summary>Assemblies that a browser fetches late (wwwroot/rooms.js). Names no type of any of them.</summary>
internal static partial class LateRooms
{
    private const string Module = "rooms";

    /// <summary>Takes up the page itself. Without it there is nothing to show, so it throws where that cannot be had.</summary>
    public static async Task TakePageAsync()
    {
        if (await TakeAsync("page") is { } failed)
        {
            throw new InvalidOperationException(failed);
        }
    }

    /// <summary>Takes up a group of them.</summary>
    /// <returns>What kept it from that; nothing where they are here.</returns>
    public static async Task<string?> TakeAsync(string group)
    {
        await JSHost.ImportAsync(Module, "../rooms.js");
        return await TakeUpAsync(group);
    }

    [JSImport("takeUp", Module)]
    private static partial Task<string?> TakeUpAsync(string group);
}
