using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>Where what is looked for lies, as it was worked out last.</summary>
public sealed class LocatingDesk : Desk<LocatedThing>
{
    /// <summary>What the answer is to; while it is worked out anew the older answer stays.</summary>
    public LocateAsk? Ask { get; private set; }

    /// <summary>True where this was asked of these notes, answered or not.</summary>
    public bool Has(LocateAsk ask, OpenedLog notes) => Ask == ask && IsOf(notes);

    /// <summary>What is asked next.</summary>
    public void Turn(LocateAsk ask)
    {
        Answer = Ask?.Thing == ask.Thing ? Answer : null;
        Ask = ask;
    }

    public override void End(Outcome<LocatedThing> answer)
    {
        base.End(answer);
        Answer = answer.Succeeded ? Answer : null;
    }

    public override void Clear()
    {
        base.Clear();
        Ask = null;
    }
}
