using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.Reasoning.Water;

/// <summary>Isolation valves that are noted to shut off each other, two or several in turn: which of them lies before the others nobody can tell.</summary>
internal static class IsolationRings
{
    /// <summary>The valve, with all that lie behind it and before it at once.</summary>
    public static IReadOnlyList<string> Of(PropertyView view, string isolation) =>
        [isolation, .. Behind(view, isolation).Where(i => i != isolation && Behind(view, i).Contains(isolation)).Order(NaturalOrder.Instance)];

    public static IEnumerable<Problem> Problems(PropertyView view)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var ring in view.IsolationValves.Keys.Order(NaturalOrder.Instance).Where(i => !told.Contains(i)).Select(i => Of(view, i)).Where(r => r.Count > 1))
        {
            told.UnionWith(ring);
            yield return new Problem($"isolation valves {string.Join(", ", ring.Select(i => $"'{i}'"))}", "are noted to shut off each other, so that nobody can tell which lies before which; all of them count as what has to be shut", "Note again what lies behind each", Severity.Notice);
        }
    }

    private static HashSet<string> Behind(PropertyView view, string isolation)
    {
        var (seen, queue) = (new HashSet<string>(StringComparer.Ordinal), new Queue<string>([isolation]));
        while (queue.TryDequeue(out var at))
        {
            foreach (var next in view.IsolationValves[at].Shuts.Select(view.Identity.Of).Where(n => n != at && view.IsolationValves.ContainsKey(n) && seen.Add(n)))
            {
                queue.Enqueue(next);
            }
        }

        return seen;
    }
}
