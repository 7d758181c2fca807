using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Reasoning;

/// <summary>The station that somebody names by number or id.</summary>
internal static class StationFinder
{
    /// <summary>Stations named in a message at most.</summary>
    private const int MostNamed = 12;

    public static Outcome<string> Find(PropertyView view, string name)
    {
        var station = view.Stations.Keys.FirstOrDefault(s => s == name || view.StationNumber(s) == name || view.Name(s) == name);
        return station is not null ? station : new Problem($"station {Problem.Quote(name)}", "is not noted", name.AsSpan().IndexOfAny(",;") >= 0
            ? $"Separate stations by spaces: {string.Join(' ', name.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))}"
            : $"Name one of: {string.Join(", ", view.Stations.Keys.Select(view.StationNumber).Take(MostNamed))}");
    }
}
