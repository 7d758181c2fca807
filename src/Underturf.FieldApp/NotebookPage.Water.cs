namespace Underturf.FieldApp;

/// <summary>Making a place dry, and stopping water that runs: both answer at once, from the notes alone.</summary>
public sealed partial class NotebookPage
{
    private readonly WaterDesk water = new();

    /// <summary>Somewhere to note that water runs.</summary>
    private bool CanRun => log.TakesNotes && log.History.Now is { } view && view.WaterSupplies.Count + view.Controllers.Count + view.Stations.Count + view.Boxes.Count > 0;

    private void MakeDry(string place)
    {
        water.MakeDry(place);
        BreakOffSweep();
        _ = KeepDeskAsync();
    }

    private void OpenRunning()
    {
        water.Run();
        _ = KeepDeskAsync();
    }

    private void TakeUpWater(KeptDesk kept)
    {
        if (kept.Running)
        {
            water.Run();
            (water.LeftAs, water.Told) = (kept.LeftAs ?? "", kept.Told ?? "");
        }
        else if (kept.Dry is { } dry && WaterDesk.CanBeDry(log.History.Now, dry))
        {
            water.MakeDry(dry);
        }
    }

    private void CloseWater()
    {
        water.Close();
        _ = KeepDeskAsync();
    }
}
