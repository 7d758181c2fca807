using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>Repairing a valve or a box: the next step is worked out once the newest notes are; each tap has it worked out anew.</summary>
public sealed partial class NotebookPage
{
    private readonly RepairDesk repair = new();

    private bool IsRepairing => place is Place.Stations or Place.Boxes && repair.Thing is not null && log.TakesNotes;

    /// <summary>Stations with one valve: that is what is repaired where one names the station.</summary>
    private HashSet<string> Repairable => [.. log.History.Now.Stations.Keys.Where(s => log.History.Now.ValvesOf(s).Count() == 1)];

    private async Task OpenRepairAsync(string thing)
    {
        repair.Open(thing);
        if (state == "ready")
        {
            await PlanRepairAsync();
        }
    }

    /// <summary>The newest notes have been thought about: now the next step.</summary>
    private void FollowRepair()
    {
        if (IsRepairing)
        {
            Away(PlanRepairAsync);
        }
    }

    private void CloseRepair() => repair.Close();

    private async Task PlanRepairAsync()
    {
        var (mine, thing) = (thinking.Token, repair.Thing!);
        repair.Begin();
        StateHasChanged();
        try
        {
            var planned = await Notebook.PlanRepairAsync(inHand.Bytes, thing, new Waiting(null, mine));
            if (!mine.IsCancellationRequested && thing == repair.Thing)
            {
                repair.End(planned);
                StateHasChanged();
            }
        }
        catch (OperationCanceledException) when (mine.IsCancellationRequested)
        {
            repair.GiveUp();
        }
    }
}
