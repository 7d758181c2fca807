using Underturf.Planning.Rework;

namespace Underturf.FieldApp;

/// <summary>The rework that is being carried out.</summary>
public sealed class ReworkDesk : Desk<Planned<ReworkAnswer>>
{
    public bool IsOpen { get; set; }

    public override void Clear()
    {
        base.Clear();
        IsOpen = false;
    }
}
