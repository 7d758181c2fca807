using Underturf.Planning.Rework;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>The rework that is being carried out, and whether its next step is being worked out.</summary>
public sealed class ReworkDesk
{
    public bool IsOpen { get; private set; }

    public bool Working { get; private set; }

    public ReworkAnswer? Plan { get; private set; }

    public Problem? Trouble { get; private set; }

    public void Open() => IsOpen = true;

    public void Close() => IsOpen = false;

    public void Begin() => (Working, Trouble) = (true, null);

    public void End(Outcome<PlannedRework> planned)
    {
        (Working, Trouble) = (false, planned.Problem);
        Plan = planned.Succeeded ? planned.Value.Whole() : Plan;
    }

    /// <summary>It was given up; what was known before stays.</summary>
    public void GiveUp() => Working = false;

    /// <summary>Another property is open.</summary>
    public void Clear() => (IsOpen, Working, Plan, Trouble) = (false, false, null, null);
}
