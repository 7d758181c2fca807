namespace Underturf.FieldApp;

/// <summary>The order of the day, where one is and how long one has.</summary>
public sealed class DayDesk : Desk<PlannedDay>
{
    public bool IsOpen { get; set; }

    /// <summary>Id of the place where one is; the controller where nothing is said.</summary>
    public string? At { get; set; }

    /// <summary>Minutes that one has; a day of the practice book where nothing is said.</summary>
    public double? Minutes { get; set; }

    public override void Clear()
    {
        base.Clear();
        (IsOpen, At, Minutes) = (false, null, null);
    }
}
