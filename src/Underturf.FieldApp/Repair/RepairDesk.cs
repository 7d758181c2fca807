using Underturf.Planning.Repair;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>The repair that is being carried out, and whether its next step is being worked out.</summary>
public sealed class RepairDesk
{
    /// <summary>Id of the valve or box; nothing where none is open.</summary>
    public string? Thing { get; private set; }

    public bool Working { get; private set; }

    public RepairAnswer? Plan { get; private set; }

    public Problem? Trouble { get; private set; }

    public void Open(string thing) => (Thing, Plan, Trouble) = (thing, null, null);

    public void Close() => (Thing, Plan, Trouble) = (null, null, null);

    public void Begin() => (Working, Trouble) = (true, null);

    public void End(Outcome<PlannedRepair> planned)
    {
        var plan = planned.Succeeded ? planned.Value.Whole() : planned.Problem!;
        (Working, Trouble, Plan) = (false, plan.Problem, plan.Succeeded ? plan.Value : Plan);
    }

    /// <summary>It was given up; what was known before stays.</summary>
    public void GiveUp() => Working = false;
}
