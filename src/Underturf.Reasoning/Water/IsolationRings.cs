using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>Isolation valves that are noted to shut off each other, two or several in turn: which of them lies before the others nobody can tell.</summary>
internal static class IsolationRings
{
    /// <summary>The valve, with all that lie behind it and before it at once.</summary>
    public static IReadOnlyList<string> Of(PropertyView view, string isolation) =>
        [isolation, .. Behind(view, isolation).Where(i => i != isolation && view.IsolationValves.ContainsKey(i) && Behind(view, i).Contains(isolation)).Order(NaturalOrder.Instance)];

    /// <summary>An isolation valve, and what somebody said lies behind it, further isolation valves with what is behind those.</summary>
    public static HashSet<string> Behind(PropertyView view, string isolation)
    {
        var (seen, queue) = (new HashSet<string>([isolation], StringComparer.Ordinal), new Queue<string>([isolation]));
        while (queue.TryDequeue(out var at))
        {
            foreach (var behind in view.IsolationValves.TryGetValue(at, out var valve) ? valve.Shuts.Select(view.Identity.Of).Where(seen.Add) : [])
            {
                queue.Enqueue(behind);
            }
        }

        return seen;
    }

    public static IEnumerable<Problem> Problems(PropertyView view)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var ring in view.IsolationValves.Keys.Order(NaturalOrder.Instance).Where(i => !told.Contains(i)).Select(i => Of(view, i)).Where(r => r.Count > 1))
        {
            told.UnionWith(ring);
            yield return new Problem($"isolation valves {string.Join(", ", ring.Select(i => $"'{i}'"))}", "are noted to shut off each other, so that nobody can tell which lies before which; all of them count as what has to be shut", "Note again what lies behind each", Severity.Notice);
        }
    }
}
