using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Translation;

namespace Underturf.Reasoning.Sharing;

/// <summary>Where the wires of the valves of one station part. The valve that waters the station's own place keeps the conductor.</summary>
internal sealed class Joints(Case matter, StationPath path)
{
    private readonly HashSet<int> taken = [];

    /// <summary>That an unfound valve's wire leaves the others where it is said to.</summary>
    public double FoundShare { get; init; } = 1;

    public IEnumerable<SharedValve> Valves()
    {
        var words = new Queue<string>(FurtherPlaces());
        foreach (var (end, i) in Ordered().Select((v, i) => (v, i)))
        {
            var own = Own(end).ToList();
            var waters = end.Valve is { } id && matter.View.Valves.TryGetValue(id, out var valve) ? valve.Waters : null;
            waters ??= i == 0 ? OwnPlace : words.TryDequeue(out var seen) ? seen : null;
            var joint = own.Count > 0 && own[0].Parent >= 0 ? path.Legs[own[0].Parent].To : own.Count > 0 ? path.Controller : end.Place;
            yield return new SharedValve(end, waters, i == 0 ? null : joint, i == 0 || end.Valve is not null ? 1 : FoundShare, own);
        }
    }

    private IEnumerable<ValveEnd> Ordered() => path.Valves
        .OrderByDescending(v => v.Valve is { } id && matter.View.Valves.TryGetValue(id, out var valve) && valve.Waters is not null && valve.Waters == OwnPlace)
        .ThenByDescending(v => v.Valve is not null);

    /// <summary>Legs from where it leaves the valves before it; the whole way for the first.</summary>
    private IEnumerable<Leg> Own(ValveEnd end)
    {
        var legs = new Stack<Leg>();
        for (var leg = end.Leg; leg >= 0 && taken.Add(leg); leg = path.Legs[leg].Parent)
        {
            legs.Push(path.Legs[leg]);
        }

        return legs;
    }

    private string? OwnPlace => matter.View.Stations[path.Station].Waters is [var own, ..] ? own : null;

    /// <summary>Places that watered with it when it was run last, besides those that its valves are known to water.</summary>
    private IEnumerable<string> FurtherPlaces()
    {
        var known = path.Valves.Select(v => v.Valve is { } id && matter.View.Valves.TryGetValue(id, out var valve) ? valve.Waters : null).Append(OwnPlace).ToHashSet(StringComparer.Ordinal);
        var run = matter.History.Facts.Tests.LastOrDefault(t => matter.View.Identity.Of(t.Fact.Station) == path.Station && t.Fact.Watered.Count > 1);
        return (run?.Fact.Watered ?? []).Concat(matter.View.Stations[path.Station].Waters).Distinct().Where(w => !known.Contains(w));
    }
}
