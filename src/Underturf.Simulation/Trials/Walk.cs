using Underturf.Property;
using Underturf.Property.Practice;

namespace Underturf.Simulation.Trials;

/// <summary>Where the technician stands, and the minutes to any place by the practice book's pace and the noted positions.</summary>
internal sealed class Walk(PropertyView view, WalkPractice pace, string start)
{
    private readonly HashSet<string> found = new(StringComparer.Ordinal);

    /// <summary>Id of the place where he stands.</summary>
    public string At { get; private set; } = start;

    /// <summary>A place that nobody has noted has to be found first, once.</summary>
    public double MinutesTo(string place) => place == At ? 0 : (Metres(place) / pace.MetresPerMinute) + (IsFound(place) ? 0 : pace.FindMinutes);

    public double Go(string place)
    {
        var minutes = MinutesTo(place);
        found.Add(place);
        At = place;
        return minutes;
    }

    public bool IsFound(string place) =>
        view.Controllers.ContainsKey(place) || view.Boxes.ContainsKey(place) || view.Valves.ContainsKey(place) || found.Contains(place);

    private double Metres(string place) => view.PositionOf(At) is { } here && view.PositionOf(place) is { } there
        ? here.DistanceMetresTo(there)
        : pace.UnknownMetres;
}
