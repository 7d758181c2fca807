using Underturf.Reasoning;

namespace Underturf.FieldApp;

/// <summary>Giving valves their own stations, and repairing: the next step is worked out once the newest notes are; each tap has it worked out anew.</summary>
public sealed partial class NotebookPage
{
    private readonly ReworkDesk rework = new();
    private readonly RepairDesk repair = new();
    private readonly FlowDesk flow = new();

    private bool IsReworking => place == Place.Stations && rework.IsOpen && log.TakesNotes;

    private bool IsRepairing => place is Place.Stations or Place.Boxes && repair.Thing is not null && log.TakesNotes;

    private bool IsFlowing => place == Place.Stations && flow.IsOpen;

    /// <summary>Stations with one valve: that is what is repaired where one names the station.</summary>
    private HashSet<string> Repairable => [.. log.History.Now.Stations.Keys.Where(s => log.History.Now.ValvesOf(s).Count() == 1)];

    private void OpenRework()
    {
        repair.Clear();
        (rework.IsOpen, flow.IsOpen) = (true, false);
    }

    private void OpenRepair(string thing)
    {
        (rework.IsOpen, flow.IsOpen) = (false, false);
        repair.Open(thing);
    }

    /// <summary>Whatever of it is shown is worked out as soon as the newest notes have been thought about.</summary>
    private void FollowSteps()
    {
        if (state != "ready" || papers.Working)
        {
            return;
        }

        if (IsReworking && !rework.IsOf(opened))
        {
            Away(PlanReworkAsync);
        }
        else if (IsRepairing && !repair.IsOf(opened))
        {
            Away(PlanRepairAsync);
        }
        else if (IsFlowing && !flow.IsOf(opened))
        {
            Away(FlowAsync);
        }
        else if (IsOrdering && !day.IsOf(opened))
        {
            Away(PlanDayAsync);
        }
    }

    private Task PlanReworkAsync()
    {
        var mine = thinking.Token;
        return WorkOutAsync(rework, () => Notebook.PlanReworkAsync(inHand.Bytes, new Waiting(null, mine)), mine);
    }

    private void OpenFlow()
    {
        repair.Clear();
        (rework.IsOpen, flow.IsOpen) = (false, true);
    }

    private Task FlowAsync()
    {
        var mine = thinking.Token;
        return WorkOutAsync(flow, () => Notebook.FlowAsync(inHand.Bytes, new Waiting(null, mine)), mine);
    }

    private Task PlanRepairAsync()
    {
        var (mine, thing) = (thinking.Token, repair.Thing!);
        return WorkOutAsync(repair, () => Notebook.PlanRepairAsync(inHand.Bytes, thing, new Waiting(null, mine)), mine);
    }
}
