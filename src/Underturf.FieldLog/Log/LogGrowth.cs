namespace Underturf.FieldLog;

/// <summary>
/// Whether entries that come after all others of a log leave everything that was said of it as it was. A long log then takes a note without being gone
/// through again; whatever is not plain is left to the whole way.
/// </summary>
internal static class LogGrowth
{
    /// <summary>What stands with the fresh entries, or nothing where the log has to be gone through.</summary>
    public static IReadOnlyList<Entry>? Standing(LogDocument log, IReadOnlyList<Entry> fresh)
    {
        // A word on an entry that was not there yet may be about one of the fresh.
        if (log.Entries.Count == 0 || log.HasIdleWords || !IsBehind(log.Entries[^1], fresh) || !fresh.All(entry => entry.Header.Property == log.Property))
        {
            return null;
        }

        var standing = log.Standing.ToList();
        var entries = log.Entries.ToList();
        foreach (var entry in fresh)
        {
            if (!Follows(entries, entry) || !Apply(entries, standing, entry))
            {
                return null;
            }

            entries.Add(entry);
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

    /// <summary>Whether it is the next of its writer, after the one and only before it.</summary>
    private static bool Follows(List<Entry> entries, Entry entry)
    {
        var mine = entries.Where(e => e.Id.Writer == entry.Id.Writer && e.Header.Property == entry.Header.Property);
        Header? last = null;
        foreach (var header in mine.Select(e => e.Header))
        {
            if (last is not null && header.Id.Seq <= last.Id.Seq)
            {
                return false;
            }

            last = header;
        }

        return entry.Id.Seq == (last?.Id.Seq ?? 0) + 1 && entry.Header.Previous == (last?.Hash ?? "") && (last is null || entry.Header.Noted.CompareTo(last.Noted) > 0);
    }

    private static bool Apply(List<Entry> entries, List<Entry> standing, Entry entry)
    {
        switch (entry.Fact)
        {
            case RestoreFact:
                return false;
            case StrikeFact strike:
                var struck = entries.Where(e => strike.Entry.StartsWith(e.Id.Writer, StringComparison.Ordinal) && e.Id.ToString() == strike.Entry).ToList();
                standing.RemoveAll(struck.Contains);
                return struck.Count > 0 && struck.TrueForAll(e => e.Fact is not (StrikeFact or RestoreFact));
            case not null:
                standing.Add(entry);
                return true;
            default:
                return true;
        }
    }
}
