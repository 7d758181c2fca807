using System.Text.Json.Serialization;
using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>What a hand is at on Ground. The page keeps it while other places are open, so nothing that was tapped is lost.</summary>
/// <remarks>It is kept on the device as it is.</remarks>
public sealed class GroundHand
{
    /// <summary>Id of the thing whose card is open.</summary>
    public string? Chosen { get; set; }

    public PlacingDraft? Placing { get; set; }

    public TieDraft? Tying { get; set; }

    /// <summary>The picture that is being laid beneath the plan.</summary>
    public BackdropHand? Laying { get; set; }

    /// <summary>What is hidden and looked for.</summary>
    public SeekHand? Seeking { get; set; }

    /// <summary>The points of a distance that is being measured.</summary>
    public List<Position>? Measured { get; set; }

    /// <summary>Whether taps are caught by what is known nearby.</summary>
    public bool Snaps { get; set; } = true;

    /// <summary>What caught the last tap.</summary>
    [JsonIgnore]
    public string? SnappedTo { get; private set; }

    public bool IsLooking => Placing is null && Measured is null && Tying is null && Laying is null && Seeking is null;

    /// <summary>Takes in a tap, by what the hand is at.</summary>
    public void Take(GroundTap tap, GroundPlan plan)
    {
        if (IsLooking)
        {
            Chosen = GroundReach.Under(plan, tap)?.Id;
            return;
        }

        if (Tying is { } tying)
        {
            tying.Take(plan, tap);
            return;
        }

        if (Seeking is { } seeking)
        {
            seeking.Take(tap);
            return;
        }

        var (at, to) = Snaps ? GroundReach.Snap(plan, tap, Placing?.Thing) : (tap.At, null);
        SnappedTo = to?.Name;
        if (Laying is { } laying)
        {
            laying.Take(tap, at);
            return;
        }

        if (Placing is { } placing)
        {
            placing.Take(PlacingDraft.Rounded(at));
        }
        else
        {
            Measured!.Add(at);
        }
    }

    /// <summary>Takes back the last point that was tapped.</summary>
    public void TakeBack()
    {
        var points = Placing?.Points ?? Measured ?? Seeking?.Points ?? [];
        if (points.Count > 0)
        {
            points.RemoveAt(points.Count - 1);
        }

        SnappedTo = null;
    }

    public void Place(PlacingDraft draft) => Turn(placing: draft);

    public void Measure() => Turn(measured: []);

    public void Tie(string thing)
    {
        Turn(tying: new TieDraft { Thing = thing });
        Chosen = thing;
    }

    public void Lay(BackdropHand picture) => Turn(laying: picture);

    /// <summary>Looks for something hidden; goes on with it where it is what was looked for.</summary>
    public void Seek(string thing)
    {
        var seeking = Seeking?.Thing == thing ? Seeking : new SeekHand { Thing = thing };
        Turn(seeking: seeking);
        Chosen = null;
    }

    public void Look(string? chosen)
    {
        Turn();
        Chosen = chosen;
    }

    /// <summary>The hand once what it is at is stored: a tie is followed by the next one, anything else by looking.</summary>
    public GroundHand Done() => new() { Chosen = Placing?.Thing ?? Chosen, Tying = Tying is { } tying ? new TieDraft { Thing = tying.Thing } : null, Snaps = Snaps };

    private void Turn(PlacingDraft? placing = null, TieDraft? tying = null, List<Position>? measured = null, BackdropHand? laying = null, SeekHand? seeking = null) =>
        (Placing, Tying, Measured, Laying, Seeking, SnappedTo) = (placing, tying, measured, laying, seeking, null);

    /// <summary>The points in hand, whether they close to an outline, and what is said of them.</summary>
    public (IReadOnlyList<Position> Points, bool Closed, string Words) Sketch(bool feet) =>
        Laying is { } laying ? (laying.WaitingAt is { } point ? [point] : [], false, "") :
        Tying is { } tying ? (tying.At is { } mark ? [mark] : [], false, "") :
        Placing is { } placing ? (placing.Points, placing.IsClosed, "")
        : Seeking is { } seeking ? (seeking.Points, false, "")
        : Measured is { Count: > 0 } measured ? (measured, false, measured.Count > 1 ? GroundWords.Distance(GroundReach.LengthMetres(measured), feet) : "")
        : ([], false, "");
}
