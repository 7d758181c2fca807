using Underturf.Quantities;

namespace Underturf.Property;

/// <summary>
/// What somebody means by a name: an id; what people call a thing; its label without the word for its kind, or with it; for a valve the number of its station too.
/// The nearer way of naming goes before the farther one, and what could be several things is listed.
/// </summary>
public sealed class NameFinder(PropertyView view)
{
    /// <summary>Things named in a message at most.</summary>
    private const int MostNamed = 12;

    /// <param name="ids">Of what can be meant.</param>
    /// <param name="what">Is asked for: "place".</param>
    /// <param name="lacks">What is said of a name that none of them has.</param>
    public Outcome<string> Find(IEnumerable<string> ids, string name, string what, string lacks = "is not noted")
    {
        var known = ids.Distinct(StringComparer.Ordinal).ToList();
        return Meant(known, name).ToList() switch
        {
            [var only] => only,
            [] => new Problem($"{what} {Problem.Quote(name)}", lacks, known.Count == 0 ? "Nothing is noted yet that could be meant: note it first" : $"Name one of: {string.Join(", ", known.GroupBy(Kind).SelectMany(k => k.Select(Told).Order(NaturalOrder.Instance)).Take(MostNamed))}"),
            var many => new Problem($"{what} {Problem.Quote(name)}", $"is the name of {many.Count} things", $"Name one by its id: {string.Join(", ", many.Take(MostNamed).Select(id => $"{id} ({view.Name(id)})"))}"),
        };
    }

    /// <summary>Whether a name, however it is said, can mean a thing.</summary>
    public bool CanMean(string id, string name) => Meant([view.Identity.Of(id)], name).Count > 0;

    /// <summary>All that it can mean.</summary>
    public IReadOnlyList<string> Meant(IEnumerable<string> ids, string name)
    {
        var known = ids.Distinct(StringComparer.Ordinal).ToList();
        var asked = string.Join(' ', name.Split(default(char[]), StringSplitOptions.RemoveEmptyEntries));
        var id = view.Identity.Of(asked);
        return known.Contains(id) ? [id]
            : known.FindAll(k => Called(k).Contains(asked, StringComparer.OrdinalIgnoreCase)) is { Count: > 0 } called ? called
            : known.FindAll(k => IsLike(k, asked));
    }

    /// <summary>People name stations by their number.</summary>
    private string Told(string id) => view.Stations.ContainsKey(id) ? view.StationNumber(id) : view.Name(id);

    private IEnumerable<string> Called(string id) => view.Stations.ContainsKey(id) ? [view.Name(id), view.StationNumber(id)] : [view.Name(id)];

    private bool IsLike(string id, string asked)
    {
        var kind = Kind(id);
        return Without(kind, asked) is { Length: > 0 } bare && Called(id).Concat(Also(id)).Any(name => string.Equals(Without(kind, name), bare, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>A valve goes by its station's number and name; a station by its number alone where two controllers have it.</summary>
    private IEnumerable<string> Also(string id) => view.Stations.TryGetValue(id, out var itself) ? [itself.Label ?? $"{itself.Terminal}"]
        : view.Valves.TryGetValue(id, out var valve) && valve.Station is { } of && view.Stations.ContainsKey(view.Identity.Of(of))
        ? [view.StationNumber(of), view.Name(of), $"of {view.Name(of)}", view.Identity.Of(of)]
        : [];

    private string Kind(string id) => view.Controllers.ContainsKey(id) ? "controller"
        : view.Stations.ContainsKey(id) ? "station"
        : view.Boxes.ContainsKey(id) ? "box"
        : view.Valves.ContainsKey(id) ? "valve"
        : view.IsolationValves.ContainsKey(id) ? "isolation valve"
        : view.Cables.ContainsKey(id) ? "cable"
        : view.Pipes.ContainsKey(id) ? "pipe"
        : view.Ends.ContainsKey(id) ? "end"
        : string.Empty;

    /// <summary>The words of a name but those of its kind.</summary>
    private static string Without(string kind, string name)
    {
        var words = name.Split(default(char[]), StringSplitOptions.RemoveEmptyEntries).ToList();
        foreach (var word in kind.Split(' '))
        {
            var at = words.FindIndex(w => string.Equals(w, word, StringComparison.OrdinalIgnoreCase));
            if (at >= 0)
            {
                words.RemoveAt(at);
            }
        }

        return string.Join(' ', words);
    }
}
