using Microsoft.AspNetCore.Components;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>Noting comes first: what else the page is made of is fetched once one can note.</summary>
public sealed partial class NotebookPage
{
    private const string ReadingOn = "Reading the rest of a long log…";

    /// <summary>The forms can name what the practice book names.</summary>
    private bool hasBook;

    /// <summary>All of the page is here.</summary>
    private bool isWhole;

    /// <summary>What kept some of it from being fetched.</summary>
    private Problem? missing;

    [Inject]
    private ILateRooms Rooms { get; set; } = null!;

    /// <summary>Somewhere that takes more than noting does, before that is here.</summary>
    private bool IsWaiting => !noting && (
        (!isWhole && (water.IsOpen || place is Place.Ground or Place.Boxes or Place.Papers || IsReworking || IsRepairing || IsFlowing || IsOrdering))
        || (!log.IsWhole && (water.IsOpen || place != Place.Now || IsOrdering)));

    private string WaitsFor => missing is not null ? "" : log.IsWhole ? "Fetching the rest of the page…" : "This place needs all of it. You can note meanwhile.";

    /// <summary>One can note meanwhile; what is worked out has to wait for all of the log.</summary>
    /// <returns>False where somebody has given up waiting for what would be worked out then.</returns>
    private async Task<bool> ReadWholeAsync()
    {
        if (deskOf != log.Document.Property)
        {
            TurnDesk();
        }

        Say("working", ReadingOn);
        await log.ReadWholeAsync();
        return state != "stopped";
    }

    private async Task FetchBookAsync()
    {
        missing = await Rooms.BookAsync();
        hasBook = missing is null;
    }

    /// <returns>Whether all of the page is here.</returns>
    private async Task<bool> CompleteAsync()
    {
        if (!isWhole)
        {
            missing = await Rooms.AllAsync();
            isWhole = missing is null;
            StateHasChanged();
        }

        return isWhole;
    }
}
