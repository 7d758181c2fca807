using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>The order of the day, where one is and how long one has, and whether it is being worked out.</summary>
public sealed class DayDesk
{
    public bool IsOpen { get; private set; }

    public bool Working { get; private set; }

    public PlannedDay? Planned { get; private set; }

    public Problem? Trouble { get; private set; }

    /// <summary>Id of the place where one is; the controller where nothing is said.</summary>
    public string? At { get; set; }

    /// <summary>Minutes that one has; a day of the practice book where nothing is said.</summary>
    public double? Minutes { get; set; }

    public void Open() => IsOpen = true;

    public void Close() => IsOpen = false;

    public void Begin() => (Working, Trouble) = (true, null);

    public void End(Outcome<PlannedDay> planned)
    {
        (Working, Trouble) = (false, planned.Problem);
        Planned = planned.Succeeded ? planned.Value : Planned;
    }

    /// <summary>It was given up; what was known before stays.</summary>
    public void GiveUp() => Working = false;

    /// <summary>Another property is open.</summary>
    public void Clear() => (IsOpen, Working, Planned, Trouble, At, Minutes) = (false, false, null, null, null, null);
}
