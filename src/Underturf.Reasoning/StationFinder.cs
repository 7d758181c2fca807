using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Reasoning;

/// <summary>The station that somebody names by number or id.</summary>
internal static class StationFinder
{
    public static Outcome<string> Find(PropertyView view, string name)
    {
        var found = new NameFinder(view).Find(view.Stations.Keys, name, "station");
        return found.Succeeded || name.AsSpan().IndexOfAny(",;") < 0
            ? found
            : found.Problem! with { Remedy = $"Separate stations by spaces: {string.Join(' ', name.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))}" };
    }
}
