using Underturf.Property;
using Underturf.Property.Practice;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>
/// How high things of the water are, over any one level of the property. A height that lies further from the middle of all than twice what the usual pressure
/// lifts was most likely noted in another unit: it counts for nothing.
/// </summary>
internal sealed class PipeHeights
{
    private readonly PropertyView view;
    private readonly Dictionary<string, double> heights;
    private readonly Dictionary<string, double> outlets;
    private readonly List<string> doubtful = [];

    public PipeHeights(PropertyView view, WaterPractice book)
    {
        this.view = view;
        (string Place, string Id, bool IsOutlet, Length? Height)[] all =
        [
            .. view.WaterSupplies.Select(s => ($"point of connection '{s.Key}'", s.Key, false, s.Value.Elevation)), .. view.Fittings.Select(f => ($"fitting '{f.Key}'", f.Key, false, f.Value.Elevation)),
            .. view.IsolationValves.Select(i => ($"isolation valve '{i.Key}'", i.Key, false, i.Value.Elevation)), .. view.Valves.Select(v => ($"valve '{v.Key}'", v.Key, false, v.Value.Elevation)), .. view.Outlets.Select(o => ($"outlets '{o.Key}'", o.Key, true, o.Value.Elevation)),
        ];
        double[] noted = [.. all.Select(h => h.Height?.Metres).OfType<double>().Order()];
        var (middle, most) = (noted.Length == 0 ? 0 : (noted[(noted.Length - 1) / 2] + noted[noted.Length / 2]) / 2, 2 * Units.From(book.Usual.StaticKilopascals.Median, "kPa") / PascalsPerMetre);
        bool CanBe(Length? height) => height is { } known && Math.Abs(known.Metres - middle) <= most;
        heights = all.Where(h => !h.IsOutlet && CanBe(h.Height)).DistinctBy(h => h.Id).ToDictionary(h => h.Id, h => h.Height!.Value.Metres, StringComparer.Ordinal);
        outlets = all.Where(h => h.IsOutlet && CanBe(h.Height)).ToDictionary(h => h.Id, h => h.Height!.Value.Metres, StringComparer.Ordinal);
        doubtful.AddRange(all.Where(h => h.Height is not null && !CanBe(h.Height)).Select(h => h.Place));
        Middle = middle;
    }

    /// <summary>As somebody noted it.</summary>
    public double? Noted(string id) => heights.TryGetValue(id, out var metres) ? metres : null;

    /// <summary>The same of outlets, by the id of their note.</summary>
    public double? OfOutlet(string id) => outlets.TryGetValue(id, out var metres) ? metres : null;

    /// <summary>All that are noted, but of outlets.</summary>
    public IEnumerable<double> All => heights.Values;

    /// <summary>Whether any is.</summary>
    public bool Any => heights.Count + outlets.Count > 0;

    /// <summary>One that lies far off, by a slip of its unit, does not move it.</summary>
    private double Middle { get; }

    /// <summary>
    /// What stands in for a height that nobody noted: the point of connection; where that is not noted, the middle of what is, as heights count from any level.
    /// </summary>
    public double Level => view.WaterSupplies.Keys.Select(Noted).FirstOrDefault(h => h is not null) ?? Middle;

    public IEnumerable<Problem> Problems() => doubtful.Select(place =>
        new Problem(place, "lies so far from the other heights that no usual pressure brings water there; its height counts for nothing", "Look at the unit and at the level that it counts from, and note the height again", Severity.Notice));

    /// <summary>Near enough to compare with: fresh water at any temperature of the ground.</summary>
    private const double PascalsPerMetre = 9800;
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
