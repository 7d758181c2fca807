using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>Which conductor ends at a place are joined: those that name each other as mates, and those that one splice joins.</summary>
internal sealed class JointFinder
{
    private readonly PropertyView view;
    private readonly Dictionary<string, EndFact> ends;
    private readonly List<SpliceFact> splices;

    /// <summary>Every end of a joint leads to the same one, step by step; also ends that are named but not noted here.</summary>
    private readonly Dictionary<string, string> parents = new(StringComparer.Ordinal);

    public JointFinder(PropertyView view, string place)
    {
        this.view = view;
        ends = view.Ends.Where(e => view.Identity.Of(e.Value.Place) == place).ToDictionary(e => e.Key, e => e.Value);
        splices = [.. view.Splices.Values.Where(s => view.Identity.Of(s.Place) == place)];
        foreach (var (id, end) in ends)
        {
            JoinAll([id, .. end.Mates]);
        }

        splices.ForEach(splice => JoinAll(splice.Joins));
    }

    /// <summary>Joints in the order of their first ends, as people count; then splices whose conductors nobody noted.</summary>
    public IReadOnlyList<Joint> Joints() =>
    [
        .. ends.Keys.OrderBy(view.Name, NaturalOrder.Instance).ThenBy(id => id, StringComparer.Ordinal).GroupBy(Root).Select(Joint),
        .. splices.Where(s => !s.Joins.Any(j => ends.ContainsKey(view.Identity.Of(j)))).Select(s => new Joint([], s.Connector, s.Joins.Count)),
    ];

    private Joint Joint(IGrouping<string, string> here)
    {
        var elsewhere = parents.Keys.Count(id => Root(id) == here.Key) - here.Count();
        var connector = splices.LastOrDefault(s => s.Joins.Any(j => Root(view.Identity.Of(j)) == here.Key))?.Connector;
        return new Joint([.. here.Select(id => End(id, ends[id], here))], connector, elsewhere);
    }

    private ConductorEnd End(string id, EndFact end, IEnumerable<string> joined)
    {
        var far = end.FarEnd is { } other ? view.Ends.GetValueOrDefault(view.Identity.Of(other)) : null;
        var own = Carries(end);
        var carries = own ?? Carries(far) ?? joined.Where(mate => mate != id).Select(mate => Carries(ends[mate])).FirstOrDefault(c => c is not null);
        var goesTo = far is not null ? view.Name(far.Place) : end.Cable is { } cable ? Along(cable, end.Place) : null;
        return new ConductorEnd(
            id, view.Name(id), end.Colour, end.Gauge?.ToString(), end.Sure, carries?.Text, own is null ? Grade.Inferred : end.Sure, carries?.Station, goesTo, end.Note);
    }

    private (string Text, string? Station)? Carries(EndFact? end) =>
        end?.Station is { } station ? ($"station {view.StationNumber(station)}", view.Identity.Of(station))
        : end?.Common == true ? ("common", null)
        : null;

    private string? Along(string cable, string from) => view.Cables.TryGetValue(view.Identity.Of(cable), out var run)
        ? view.Name(view.Identity.Of(run.From) == view.Identity.Of(from) ? run.To : run.From)
        : null;

    private void JoinAll(IEnumerable<string> joined)
    {
        var ids = joined.Select(view.Identity.Of).ToList();
        ids.ForEach(id => parents.TryAdd(id, id));
        foreach (var other in ids.Skip(1).Where(other => Root(other) != Root(ids[0])))
        {
            parents[Root(other)] = Root(ids[0]);
        }
    }

    private string Root(string id)
    {
        while (parents[id] != id)
        {
            id = parents[id];
        }

        return id;
    }
}
