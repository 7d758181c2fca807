namespace Underturf.FieldApp;

/// <summary>The order of the day.</summary>
public sealed class DayDesk : Desk<PlannedDay>
{
    public DayDraft Draft { get; set; } = new();

    public override void Clear()
    {
        base.Clear();
        Draft = new DayDraft();
    }
}
