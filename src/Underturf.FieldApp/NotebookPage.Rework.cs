using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>Giving valves their own stations: the next step is worked out once the newest notes are; each tap has it worked out anew.</summary>
public sealed partial class NotebookPage
{
    private readonly ReworkDesk rework = new();

    private bool IsReworking => place == Place.Stations && rework.IsOpen && log.TakesNotes;

    private async Task OpenReworkAsync()
    {
        rework.Open();
        if (state == "ready")
        {
            await PlanReworkAsync();
        }
    }

    /// <summary>The newest notes have been thought about: now the next step.</summary>
    private void FollowRework()
    {
        if (IsReworking)
        {
            Away(PlanReworkAsync);
        }
    }

    private void CloseRework() => rework.Close();

    private async Task PlanReworkAsync()
    {
        var mine = thinking.Token;
        rework.Begin();
        StateHasChanged();
        try
        {
            var planned = await Notebook.PlanReworkAsync(inHand.Bytes, new Waiting(null, mine));
            if (!mine.IsCancellationRequested)
            {
                rework.End(planned);
                StateHasChanged();
            }
        }
        catch (OperationCanceledException) when (mine.IsCancellationRequested)
        {
            rework.GiveUp();
        }
    }
}
