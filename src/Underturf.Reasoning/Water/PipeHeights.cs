using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

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
        .OfType<Length>()
        .Select(h => h.Metres);

    /// <summary>
    /// What stands in for a height that nobody noted: the point of connection; where that is not noted, the middle of what is, as heights count from any level.
    /// </summary>
    public static double Level(PropertyView view) => view.WaterSupplies.Values.FirstOrDefault(s => s.Elevation is not null)?.Elevation?.Metres ?? Middle(view);

    /// <summary>Heights that are further from the middle of all than twice what the usual pressure lifts: most likely in another unit.</summary>
    public static IEnumerable<Problem> Problems(PropertyView view, WaterPractice book)
    {
        var (middle, most) = (Middle(view), 2 * Units.From(book.Usual.StaticKilopascals.Median, "kPa") / PascalsPerMetre);
        (string Place, Length? Height)[] all =
        [
            .. view.WaterSupplies.Select(s => ($"point of connection '{s.Key}'", s.Value.Elevation)), .. view.Fittings.Select(f => ($"fitting '{f.Key}'", f.Value.Elevation)),
            .. view.IsolationValves.Select(i => ($"isolation valve '{i.Key}'", i.Value.Elevation)), .. view.Valves.Select(v => ($"valve '{v.Key}'", v.Value.Elevation)), .. view.Outlets.Select(o => ($"outlets '{o.Key}'", o.Value.Elevation)),
        ];
        return all.Where(h => h.Height is { } height && Math.Abs(height.Metres - middle) > most).Select(h =>
            new Problem(h.Place, "lies so far from the other heights that no usual pressure brings water there", "Look at the unit and at the level that it counts from, and note the height again", Severity.Notice));
    }

    /// <summary>Near enough to compare with: fresh water at any temperature of the ground.</summary>
    private const double PascalsPerMetre = 9800;

    /// <summary>One that lies far off, by a slip of its unit, does not move it.</summary>
    private static double Middle(PropertyView view)
    {
        double[] heights = [.. All(view).Concat(view.Outlets.Values.Select(o => o.Elevation?.Metres).OfType<double>()).Order()];
        return heights.Length == 0 ? 0 : (heights[(heights.Length - 1) / 2] + heights[heights.Length / 2]) / 2;
    }
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
