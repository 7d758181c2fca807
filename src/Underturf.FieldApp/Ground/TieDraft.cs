using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>A thing that is being tied: the mark that was tapped, and what the tape shows. It stays as it is until it is stored.</summary>
public sealed class TieDraft
{
    /// <summary>The thing that is tied.</summary>
    public required string Thing { get; init; }

    /// <summary>The mark, and the point of it that was tapped.</summary>
    public GroundFeature? Mark { get; set; }

    public Position? At { get; set; }

    public string Distance { get; set; } = "";

    public Grade Grade { get; set; } = Grade.Measured;

    /// <summary>True where the last tap was on nothing known.</summary>
    public bool Missed { get; private set; }

    /// <summary>Takes in a tap: on a point, a corner or an edge of something on the plan.</summary>
    public void Take(GroundPlan plan, GroundTap tap)
    {
        var (at, to) = GroundReach.Snap(plan, tap, Thing);
        if (to is null && GroundReach.Under(plan, tap) is { Form: GroundForm.Point } near && near.Id != Thing)
        {
            (at, to) = (near.Shape[0], near);
        }

        var known = to is { Kind: not GroundWords.Cable };
        (Mark, At, Missed) = known ? (to, PlacingDraft.Rounded(at), false) : (Mark, At, true);
    }

    /// <summary>Chooses a mark that is a point, from the list.</summary>
    public void Choose(GroundFeature mark) => Choose(mark, mark.Shape[0]);

    /// <summary>Chooses a point of a mark.</summary>
    public void Choose(GroundFeature mark, Position at) => (Mark, At, Missed) = (mark, at, false);

    /// <summary>What the note says, or what is still missing.</summary>
    public Outcome<Fact> ToFact(bool feet)
    {
        if (Mark is null)
        {
            return new Problem("mark", "is not given yet", "Tap the mark on the map, or choose it");
        }

        // A phone's number pad may have no point but a comma.
        var typed = Distance.Trim().Replace(',', '.');
        var read = Units.Parse(typed.Length > 0 && char.IsAsciiDigit(typed[^1]) ? $"{typed} {(feet ? "ft" : "m")}" : typed, Dimension.Length);
        return !read.Succeeded || read.Value <= 0
            ? new Problem("distance", "is not given yet", $"Write what the tape shows, for example {(feet ? "41.5" : "12.65")}")
            : new TieFact { Thing = Thing, Mark = Mark.Id, Corner = Mark.Form == GroundForm.Point ? null : At, Distance = Length.FromSi(read.Value), Sure = Grade };
    }

    /// <summary>What the map says it should be, so that a slip is seen; nothing where the thing has no place.</summary>
    public double? ExpectedMetres(GroundPlan plan) => At is { } from && plan.Find(Thing) is { Form: GroundForm.Point } thing ? from.DistanceMetresTo(thing.Shape[0]) : null;
}
