using Underturf.Property;

namespace Underturf.FieldApp;

/// <summary>A paper that can be made, and what the notes lack for it.</summary>
/// <param name="Lacks">What it will have to leave open; empty where nothing.</param>
public sealed record PaperNeeds(string Title, string Says, IReadOnlyList<string> Lacks)
{
    public static IReadOnlyList<PaperNeeds> Of(PropertyHistory history)
    {
        var (view, facts, stock) = (history.Now, history.Facts, Stock.Of(history));
        return
        [
            new("Findings", "What is wrong, how sure that is, what was read, what was left as what.", [.. Lack(facts.Readings.Count + facts.Tests.Count == 0, "no reading and no run is noted")]),
            new(
                "Station chart",
                "For the controller's door: what each station waters, its last ohms, its state.",
                [.. Lack(view.Stations.Count == 0, "no station is noted"), .. Lack(stock.StationsWithoutValve.Count > 0, $"{stock.StationsWithoutValve.Count} of {view.Stations.Count} stations have no valve that was found")]),
            new(
                "Plan",
                "Boxes, valves and runs where they were measured.",
                [.. Lack(!view.Boxes.Keys.Concat(view.Valves.Keys).Any(id => view.PositionOf(id) is not null), "no place was measured")]),
            .. Sheets(view),
        ];
    }

    private static IEnumerable<PaperNeeds> Sheets(PropertyView view) => UnnamedEnds.Places(view) is { Count: > 0 } places
        ? [new("Test sheets", $"For working on paper: which wire is it, at {string.Join(", ", places.Select(view.Name))}.", [.. Lack(view.Controllers.Count == 0, "no controller is noted that the wires could come from")])]
        : [];

    private static IEnumerable<string> Lack(bool missing, string what) => missing ? [what] : [];
}
