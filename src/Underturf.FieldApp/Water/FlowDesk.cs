using Underturf.Reasoning.Water;

namespace Underturf.FieldApp;

/// <summary>What water each station takes, while somebody looks at it.</summary>
public sealed class FlowDesk : Desk<FlowLines>
{
    public bool IsOpen { get; set; }

    public override void Clear()
    {
        base.Clear();
        IsOpen = false;
    }
}
