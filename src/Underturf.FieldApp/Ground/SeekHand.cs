using System.Text.Json.Serialization;
using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>A hand that looks for something hidden: at a stop of the search, or where the map was tapped.</summary>
public sealed class SeekHand
{
    /// <summary>So near to a stop a tap means the stop.</summary>
    private const double StopPixels = 24;

    /// <summary>Id of what is looked for.</summary>
    public required string Thing { get; init; }

    /// <summary>Number of the stop that one is at, from 0.</summary>
    public int Stop { get; set; }

    /// <summary>Where the map was tapped: one place, or a path that a signal took.</summary>
    public List<Position> Points { get; init; } = [];

    /// <summary>True where each tap goes on along a path.</summary>
    public bool FollowsPath { get; set; }

    /// <summary>Where the last note of this search was made: the next walk begins there.</summary>
    public Position? Stands { get; set; }

    /// <summary>Where the stops of the search lie.</summary>
    [JsonIgnore]
    public IReadOnlyList<Position> Stops { get; set; } = [];

    /// <summary>True once the map has turned to the stops: from then on it stands where the hand moves it.</summary>
    [JsonIgnore]
    public bool HasTurned { get; set; }

    public void Take(GroundTap tap)
    {
        var near = Stops.Index().Where(s => s.Item.DistanceMetresTo(tap.At) <= StopPixels * tap.MetresPerPixel).ToList();
        if (near.Count > 0 && !FollowsPath)
        {
            Choose(near.MinBy(s => s.Item.DistanceMetresTo(tap.At)).Index);
            return;
        }

        if (!FollowsPath)
        {
            Points.Clear();
        }

        Points.Add(PlacingDraft.Rounded(tap.At));
    }

    /// <summary>Goes to a stop.</summary>
    public void Choose(int stop)
    {
        (Stop, FollowsPath) = (stop, false);
        Points.Clear();
    }

    /// <summary>Begins or ends a path; without one the last point of it is left.</summary>
    public void Follow(bool path)
    {
        FollowsPath = path;
        if (!path && Points.Count > 1)
        {
            Points.RemoveRange(0, Points.Count - 1);
        }
    }
}
