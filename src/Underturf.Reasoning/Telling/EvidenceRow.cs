using System.Globalization;

namespace Underturf.Reasoning.Telling;

/// <summary>Notes taken in one way that show, predict and say the same, as one line: "station ohms, stations 18, 19, 20".</summary>
public sealed record EvidenceRow(string Entries, string What, string Observed, string Predicted, string Speaks, IReadOnlyList<EvidenceLine> Lines)
{
    public static IReadOnlyList<EvidenceRow> Of(IReadOnlyList<EvidenceLine> lines) =>
        [.. lines.GroupBy(l => (l.What.Split(", ")[0], l.Observed, l.Predicted, l.Speaks)).Select(g => Of(g.Key.Item1, [.. g]))];

    private static EvidenceRow Of(string how, IReadOnlyList<EvidenceLine> same)
    {
        var first = same[0];
        return new EvidenceRow(
            EntriesOf(same),
            same.Count == 1 ? first.What : $"{how}, {Subjects([.. same.Select(l => l.What[Math.Min(l.What.Length, how.Length + 2)..]).Distinct(StringComparer.Ordinal)])}",
            first.Observed,
            first.Predicted,
            first.Speaks,
            same);
    }

    private static string EntriesOf(IReadOnlyList<EvidenceLine> same) => same.Count > MostNamed ? $"{same[0].Entry} to {same[^1].Entry}, {same.Count} notes"
        : IsRun(same) ? $"{same[0].Entry} to {same[^1].Entry}"
        : string.Join(", ", same.Select(l => l.Entry));

    /// <summary>"stations 18, 19, 20", said once.</summary>
    private static string Subjects(IReadOnlyList<string> each) => each.Count > 1 && each.All(e => e.StartsWith(Station, StringComparison.Ordinal) && !e.AsSpan(Station.Length).ContainsAny(' ', ','))
        ? $"stations {string.Join(", ", each.Select(e => e[Station.Length..]))}"
        : string.Join(", ", each);

    private const string Station = "station ";

    /// <summary>More notes than this are counted, not named.</summary>
    private const int MostNamed = 12;

    /// <summary>Notes of one writer, one after the other.</summary>
    private static bool IsRun(IReadOnlyList<EvidenceLine> same) =>
        same.Count > 2 && Parts(same[0]) is (var writer, { } first) && same.Index().All(s => Parts(s.Item) == (writer, first + s.Index));

    private static (string Writer, long? Seq) Parts(EvidenceLine line)
    {
        var at = line.Entry.LastIndexOf('/');
        return (line.Entry[..Math.Max(at, 0)], long.TryParse(line.Entry.AsSpan(at + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var seq) ? seq : null);
    }
}
