using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>Something that is to be without pressure, with all that water comes to it by.</summary>
/// <param name="Things">Its valves, or itself: each with the nodes that water comes to it at; none where no pipe leads there.</param>
internal sealed record IsolationPlace(string Id, IReadOnlyList<(string Id, IReadOnlyList<int> Nodes)> Things)
{
    /// <summary>All that can be named.</summary>
    public static IReadOnlyList<string> All(PropertyView view) => [.. view.Valves.Keys, .. view.Stations.Keys, .. view.Boxes.Keys, .. view.Fittings.Keys, .. view.Pipes.Keys, .. view.IsolationValves.Keys];

    /// <param name="name">Label or id.</param>
    public static Outcome<IsolationPlace> Find(PropertyView view, PipeRecord pipes, string name)
    {
        var found = new NameFinder(view).Find(All(view), name, "place");
        return found.Succeeded ? new IsolationPlace(found.Value, [.. Valves(view, found.Value).DefaultIfEmpty(found.Value).Select(t => (t, Nodes(view, pipes, t)))]) : found.Problem!;
    }

    /// <summary>Whoever works on a station or in a box opens any of its valves.</summary>
    private static IEnumerable<string> Valves(PropertyView view, string id) =>
        view.Stations.ContainsKey(id) ? view.ValvesOf(id).Select(v => v.Id)
        : view.Boxes.ContainsKey(id) ? view.Valves.Where(v => v.Value.Box is { } box && view.Identity.Of(box) == id).Select(v => v.Key)
        : [];

    /// <summary>An isolation valve has water from both sides, and cannot be shut while it is worked on.</summary>
    private static IReadOnlyList<int> Nodes(PropertyView view, PipeRecord pipes, string id) =>
        view.Pipes.TryGetValue(id, out var pipe) ? [.. Some(pipes.DownNodeOf(view.Identity.Of(pipe.From)))]
        : view.IsolationValves.ContainsKey(id) ? [.. Some(pipes.NodeOf(id)), .. Some(pipes.DownNodeOf(id))]
        : [.. Some(pipes.NodeOf(id))];

    private static IEnumerable<int> Some(int? node) => node is { } known ? [known] : [];
}
