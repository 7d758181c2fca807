using Underturf.Property;

namespace Underturf.Reasoning.Water;

/// <summary>How high things of the water are, over any one level of the property.</summary>
internal static class PipeHeights
{
    /// <summary>As somebody noted it.</summary>
    public static double? Noted(PropertyView view, string id) =>
        (view.Fittings.GetValueOrDefault(id)?.Elevation ?? view.IsolationValves.GetValueOrDefault(id)?.Elevation ?? view.Valves.GetValueOrDefault(id)?.Elevation ?? view.WaterSupplies.GetValueOrDefault(id)?.Elevation)?.Metres;

    /// <summary>All that are noted, but of outlets.</summary>
    public static IEnumerable<double> All(PropertyView view) => view.WaterSupplies.Values.Select(s => s.Elevation)
        .Concat(view.Fittings.Values.Select(f => f.Elevation))
        .Concat(view.IsolationValves.Values.Select(i => i.Elevation))
        .Concat(view.Valves.Values.Select(v => v.Elevation))
        .OfType<Quantities.Length>()
        .Select(h => h.Metres);

    /// <summary>
    /// What stands in for a height that nobody noted: the point of connection; where that is not noted, the middle of what is, as heights count from any level.
    /// </summary>
    public static double Level(PropertyView view) => view.WaterSupplies.Values.FirstOrDefault(s => s.Elevation is not null)?.Elevation?.Metres ?? All(view).Concat(view.Outlets.Values.Select(o => o.Elevation?.Metres).OfType<double>()).DefaultIfEmpty().Average();
}

/// <summary>
/// Heights of a lateral's things. One that nobody noted lies between those next to it that are noted: at the lower end of that, or at the upper.
/// </summary>
internal sealed class LateralHeights
{
    private readonly Dictionary<string, double> heights;

    public LateralHeights(IReadOnlyCollection<string> things, IEnumerable<(string From, string To)> joins, IReadOnlyDictionary<string, double> known, bool high)
    {
        heights = new Dictionary<string, double>(known, StringComparer.Ordinal);
        var around = joins.SelectMany(j => new[] { j, (From: j.To, To: j.From) }).ToLookup(j => j.From, j => j.To, StringComparer.Ordinal);
        var rest = known.Count == 0 ? 0 : high ? known.Values.Max() : known.Values.Min();
        foreach (var thing in things.Where(t => !known.ContainsKey(t)))
        {
            var (seen, queue, found) = (new HashSet<string>([thing], StringComparer.Ordinal), new Queue<string>([thing]), new List<double>());
            while (queue.TryDequeue(out var at))
            {
                foreach (var next in around[at].Where(seen.Add))
                {
                    if (known.TryGetValue(next, out var height))
                    {
                        found.Add(height);
                    }
                    else
                    {
                        queue.Enqueue(next);
                    }
                }
            }

            heights[thing] = found.Count == 0 ? rest : high ? found.Max() : found.Min();
        }
    }

    public double Of(string thing) => heights[thing];
}
