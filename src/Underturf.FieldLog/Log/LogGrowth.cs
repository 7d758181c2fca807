namespace Underturf.FieldLog;

/// <summary>
/// Whether entries that come after all others of a log leave everything that was said of it as it was. A long log then takes a note without being gone
/// through again; whatever is not plain is left to the whole way.
/// </summary>
internal static class LogGrowth
{
    /// <summary>What stands with the fresh entries, or nothing where the log has to be gone through.</summary>
    public static GrownList<Entry>? Standing(LogDocument log, GrownList<Entry> standing, LastHeaders last, Entry[] fresh)
    {
        // A word on an entry that was not there yet may be about one of the fresh.
        if (log.Entries.Count == 0 || log.HasIdleWords || !IsBehind(log.Entries[^1], fresh) || !fresh.All(entry => entry.Header.Property == log.Property))
        {
            return null;
        }

        foreach (var (i, entry) in fresh.Index())
        {
            if (!last.IsNext(entry) || Applied(log.Entries.Concat(fresh.Take(i)), standing, entry) is not { } after)
            {
                return null;
            }

            (standing, last) = (after, last.With(entry));
        }

        return standing;
    }

    private static bool IsBehind(Entry last, IReadOnlyList<Entry> fresh)
    {
        foreach (var entry in fresh)
        {
            if (EntryOrder.Instance.Compare(last, entry) >= 0)
            {
                return false;
            }

            last = entry;
        }

        return true;
    }

    /// <summary>What stands after one entry more; nothing where that takes going through the log.</summary>
    private static GrownList<Entry>? Applied(IEnumerable<Entry> entries, GrownList<Entry> standing, Entry entry)
    {
        switch (entry.Fact)
        {
            case RestoreFact:
                return null;
            case StrikeFact strike:
                var struck = entries.Where(e => strike.Entry.StartsWith(e.Id.Writer, StringComparison.Ordinal) && e.Id.ToString() == strike.Entry).ToList();
                return struck.Count > 0 && struck.TrueForAll(e => e.Fact is not (StrikeFact or RestoreFact)) ? GrownList<Entry>.Of(standing.Where(e => !struck.Contains(e))) : null;
            case not null:
                return standing.With([entry]);
            default:
                return standing;
        }
    }
}
