using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>Where what is looked for lies, as it was worked out last, and whether that is being done anew.</summary>
public sealed class LocatingDesk
{
    private OpenedLog? of;

    /// <summary>What the answer is to; while it is worked out anew the older answer stays.</summary>
    public LocateAsk? Ask { get; private set; }

    public LocatedThing? Located { get; private set; }

    public Problem? Trouble { get; private set; }

    public bool Working { get; private set; }

    /// <summary>True where this was asked of these notes, answered or not.</summary>
    public bool Has(LocateAsk ask, OpenedLog notes) => Ask == ask && ReferenceEquals(of, notes);

    public void Begin(LocateAsk ask, OpenedLog notes)
    {
        Located = Ask?.Thing == ask.Thing ? Located : null;
        (Ask, of, Working, Trouble) = (ask, notes, true, null);
    }

    public void End(Outcome<LocatedThing> answer)
    {
        (Working, Trouble) = (false, answer.Problem);
        Located = answer.Succeeded ? answer.Value : null;
    }

    /// <summary>It was given up for something that goes before, and is to be asked again.</summary>
    public void GiveUp() => (of, Working) = (null, false);

    /// <summary>Another property is open.</summary>
    public void Clear() => (Ask, of, Located, Trouble, Working) = (null, null, null, null, false);
}
