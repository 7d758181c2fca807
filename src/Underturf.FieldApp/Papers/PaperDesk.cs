using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>The papers that were made last, and how far the making is; they stay while one is at another place of the page.</summary>
public sealed class PaperDesk
{
    private PropertyHistory? from;

    public IReadOnlyList<MadePaper>? Made { get; private set; }

    public bool Making { get; private set; }

    /// <summary>How much is made, from 0 to 1.</summary>
    public double Share { get; set; }

    public Problem? Trouble { get; private set; }

    /// <summary>True where the notes are others than those that the papers were made from.</summary>
    public bool IsOlderThan(PropertyHistory history) => from != history;

    public void Begin() => (Making, Share, Trouble) = (true, 0, null);

    public void End(Outcome<IReadOnlyList<MadePaper>> made, PropertyHistory notes)
    {
        (Making, Trouble) = (false, made.Problem);
        (Made, from) = made.Succeeded ? (made.Value, notes) : (Made, from);
    }

    /// <summary>It was given up; what was made before stays.</summary>
    public void GiveUp() => Making = false;

    /// <summary>Another property is open: its papers are others.</summary>
    public void Clear() => (Made, from, Making, Trouble) = (null, null, false, null);
}
