using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>The server that the page came from: its log is opened first, and it is kept the same as the one on the device.</summary>
public sealed partial class NotebookPage
{
    private PushAndPull home = null!;

    /// <summary>A quiet word; nothing is said of a server that has no part in this log.</summary>
    private string? HomeWords => home.State switch
    {
        HomeState.Away => "server away",
        HomeState.Unpaired => "not paired with the server",
        HomeState.HasAll when log.Damage is { } damage => damage,
        HomeState.HasAll => "server has every note",
        HomeState.Refuses => "server refused a note",
        _ => null,
    };

    /// <summary>On opening the page: the offered log is opened where none is, and from then on the two are kept the same.</summary>
    private async Task ComeHomeAsync()
    {
        if (log.IsEmpty)
        {
            Say("working", "Fetching the log of the server…");
            var offered = await OfferedAsync();
            if (log.IsEmpty && !picked)
            {
                await TakeAsync(DeviceLog.Served, offered);
            }
        }

        Server.Listen(() => InvokeAsync(() => KeepSameAsync()));
        await KeepSameAsync();
    }

    private async Task OpenOfferedAsync()
    {
        await TakeAsync(DeviceLog.Served, await OfferedAsync());
        await KeepSameAsync();
    }

    private async Task<Outcome<ReadOnlyMemory<byte>>> OfferedAsync()
    {
        var offered = await Server.PullAsync();
        return offered.Succeeded ? offered.Value.Bytes : offered.Problem!;
    }

    /// <summary>No log is here, or the server's has nothing in it: one can begin it. A file without a line that somebody chose is told to be empty.</summary>
    private bool CanBegin => log is { IsEmpty: true, Unopened: null, Source: "" or DeviceLog.Served } && unreadable is null && state != "working";

    private async Task<Problem?> BeginPropertyAsync(PropertyFact property)
    {
        if (await log.BeginAsync(property) is { } trouble)
        {
            return trouble;
        }

        picked = true;
        await TurnAsync(asksForNewer: false);
        await KeepSameAsync();
        return null;
    }

    private async Task KeepSameAsync(bool pulls = true)
    {
        if (await home.RunAsync(pulls))
        {
            ThinkOn();
        }

        StateHasChanged();
    }
}
