using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>Follows each writer's chain of headers: forks, gaps, links that do not fit, a clock that ran back.</summary>
internal static class Chains
{
    public static void Check(IEnumerable<Entry> entries, List<Problem> problems)
    {
        foreach (var chain in entries.GroupBy(e => (e.Header.Property, e.Id.Writer)))
        {
            var bySeq = chain.GroupBy(e => e.Id.Seq).OrderBy(g => g.Key).Select(g => (Seq: g.Key, Sides: g.ToList())).ToList();
            var before = (Seq: 0L, Sides: new List<Entry>());
            foreach (var here in bySeq)
            {
                CheckStep(chain.Key.Writer, before, here, problems);
                before = here;
            }
        }
    }

    private static void CheckStep(
        string writer, (long Seq, List<Entry> Sides) before, (long Seq, List<Entry> Sides) here, List<Problem> problems)
    {
        if (here.Sides.Count > 1)
        {
            problems.Add(new Problem(
                here.Sides[0].Id.ToString(),
                $"stands for {here.Sides.Count} different entries; all of them count",
                "Two copies of one notebook went on apart: give one of them a new writer, and strike what was noted twice"));
        }

        if (here.Seq > before.Seq + 1)
        {
            problems.Add(Gap(writer, before.Seq + 1, here.Seq - 1));
            return;
        }

        var headers = before.Sides.Select(e => e.Header.Hash).ToHashSet(StringComparer.Ordinal);
        problems.AddRange(here.Sides.Where(entry => !Follows(entry, headers)).Select(entry => Broken(entry, before.Seq)));
        var earliest = before.Sides.Select(e => e.Header.Noted).DefaultIfEmpty(new HybridTime(long.MinValue, 0)).Min();
        problems.AddRange(here.Sides.Where(entry => entry.Header.Noted.CompareTo(earliest) <= 0).Select(RanBack));
    }

    private static bool Follows(Entry entry, HashSet<string> headers) =>
        headers.Count == 0 ? entry.Header.Previous.Length == 0 : headers.Contains(entry.Header.Previous);

    private static Problem Broken(Entry entry, long before) => new(
        entry.Id.ToString(),
        before == 0
            ? "is the first of its writer but names an entry before it"
            : $"does not follow from {entry.Id.Writer}/{before}, which stands before it",
        "One of the two was replaced: compare with another copy of the log; both count");

    private static Problem RanBack(Entry entry) => new(
        entry.Id.ToString(),
        "was noted no later than the entry before it",
        "Check the clock of that device; the order of noting holds",
        Severity.Notice);

    private static Problem Gap(string writer, long first, long last) => new(
        $"{writer}/{first}",
        first == last ? "is missing from the chain" : $"and all up to {writer}/{last} are missing from the chain",
        "Merge the copy of the log that has them; what is here counts");
}
