using Underturf.Planning.Day;
using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>The order of the day: worked out once the newest notes are, by the clock of the device; each note has it worked out anew.</summary>
public sealed partial class NotebookPage
{
    private const long MinuteMilliseconds = 60_000;

    private readonly DayDesk day = new();

    private bool IsOrdering => place == Place.Now && day.IsOpen && !noting && log.TakesNotes;

    private async Task OpenDayAsync()
    {
        day.Open();
        if (state == "ready")
        {
            await PlanDayAsync();
        }
    }

    /// <summary>The newest notes have been thought about: now the order.</summary>
    private void FollowDay()
    {
        if (place == Place.Now && day.IsOpen)
        {
            Away(PlanDayAsync);
        }
    }

    private async Task PlanDayAsync()
    {
        var mine = thinking.Token;
        day.Begin();
        StateHasChanged();
        try
        {
            // The host knows the zone that the device is in.
            var begin = DateTimeOffset.FromUnixTimeMilliseconds(Device.WallMilliseconds / MinuteMilliseconds * MinuteMilliseconds);
            var planned = await Notebook.PlanDayAsync(inHand.Bytes, new DayAsk(begin, day.At, day.Minutes), new Waiting(null, mine));
            if (!mine.IsCancellationRequested)
            {
                day.End(planned);
                StateHasChanged();
            }
        }
        catch (OperationCanceledException) when (mine.IsCancellationRequested)
        {
            day.GiveUp();
        }
    }
}
