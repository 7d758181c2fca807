using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>
/// Each entry of the lines once. A line that stands twice counts once, and where one copy of an entry has its body and another
/// has it erased, the erased one stands: whoever erased it must not see it come back with the next merge.
/// </summary>
internal static class DistinctEntries
{
    public static List<Entry> Of(IEnumerable<LogLine> lines, List<Problem> problems)
    {
        var byHeader = new Dictionary<string, LogLine>(StringComparer.Ordinal);
        foreach (var line in lines.Where(line => line.Entry is not null))
        {
            var key = line.Entry!.Header.Hash;
            if (!byHeader.TryAdd(key, line))
            {
                byHeader[key] = Choose(byHeader[key], line, problems);
            }
        }

        List<Entry> entries = [.. byHeader.Values.Select(line => line.Entry!)];
        if (!IsInOrder(entries))
        {
            entries.Sort(EntryOrder.Instance);
        }

        return entries;
    }

    /// <summary>A log is mostly written in order; looking is much quicker than sorting.</summary>
    private static bool IsInOrder(List<Entry> entries)
    {
        for (var i = 1; i < entries.Count; i++)
        {
            if (EntryOrder.Instance.Compare(entries[i - 1], entries[i]) > 0)
            {
                return false;
            }
        }

        return true;
    }

    private static LogLine Choose(LogLine first, LogLine second, List<Problem> problems)
    {
        var same = first.Entry!.Erased == second.Entry!.Erased;
        problems.Add(same
            ? new Problem(second.Place, $"repeats line {first.Number}", "Unite copies with `underturf merge`, which keeps each line once; here it counts once")
            : new Problem(
                second.Place,
                $"is the same entry as line {first.Number}, one of them with its body erased",
                "Nothing needs doing; the erased one counts",
                Severity.Notice));
        return second.Entry.Erased ? second : first;
    }
}
