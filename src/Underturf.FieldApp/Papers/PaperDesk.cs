using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>The papers that were made last, and how far the making is; they stay while one is at another place of the page.</summary>
public sealed class PaperDesk : Desk<IReadOnlyList<MadePaper>>
{
    private PropertyHistory? from;
    private PropertyHistory? asked;

    /// <summary>How much is made, from 0 to 1.</summary>
    public double Share { get; set; }

    /// <summary>True where the notes are others than those that the papers were made from.</summary>
    public bool IsOlderThan(PropertyHistory history) => from != history;

    /// <summary>Which notes they are made from next.</summary>
    public void Turn(PropertyHistory notes) => (asked, Share) = (notes, 0);

    public override void End(Outcome<IReadOnlyList<MadePaper>> answer)
    {
        base.End(answer);
        from = answer.Succeeded ? asked : from;
    }

    public override void Clear()
    {
        base.Clear();
        from = null;
    }
}
