using Underturf.Planning.Repair;

namespace Underturf.FieldApp;

/// <summary>The repair that is being carried out.</summary>
public sealed class RepairDesk : Desk<Planned<RepairAnswer>>
{
    /// <summary>Id of the valve or box; nothing where none is open.</summary>
    public string? Thing { get; private set; }

    /// <summary>What is known of another thing is no answer to this one.</summary>
    public void Open(string thing)
    {
        Clear();
        Thing = thing;
    }

    public override void Clear()
    {
        base.Clear();
        Thing = null;
    }
}
