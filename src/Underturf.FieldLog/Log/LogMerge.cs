namespace Underturf.FieldLog;

/// <summary>
/// The union of two logs: every distinct line of both, exactly as stored. It does not matter which comes first, how often it is
/// done or in what groups.
/// </summary>
public static class LogMerge
{
    /// <summary>Entries come first in the order of noting, then lines that could not be read, ordered by their bytes.</summary>
    public static LogDocument Union(LogDocument a, LogDocument b)
    {
        if (ReferenceEquals(a.Kinds, b.Kinds) && a.IsPlain && b.IsPlain && a.Lines.Count + b.Lines.Count > 0)
        {
            return a.Lines.Count >= b.Lines.Count ? Plain(a, b) : Plain(b, a);
        }

        IEnumerable<LogLine> lines = [.. a.Lines, .. b.Lines];
        var entries = DistinctEntries.Of(lines, []);
        var bad = lines.Where(line => line.Entry is null && !line.IsBlank).Select(line => line.Bytes).ToList();
        bad.Sort((x, y) => x.Span.SequenceCompareTo(y.Span));

        using var stream = new MemoryStream();
        foreach (var line in entries.Select(entry => entry.Line))
        {
            Add(stream, line);
        }

        for (var i = 0; i < bad.Count; i++)
        {
            if (i == 0 || !bad[i].Span.SequenceEqual(bad[i - 1].Span))
            {
                Add(stream, bad[i]);
            }
        }

        return LogDocument.Read(stream.ToArray(), a.Kinds);
    }

    /// <summary>Two logs of which nothing but entries has to be said: no line is read again, and where the shorter one only goes on after the longer one, nothing is put in order again.</summary>
    private static LogDocument Plain(LogDocument longer, LogDocument shorter)
    {
        var last = longer.Entries[^1].Header.Noted;
        List<Entry> behind = [.. shorter.Entries.Where(entry => entry.Header.Noted.CompareTo(last) > 0)];
        var among = shorter.Entries.Count - behind.Count;
        if (shorter.Entries.Take(among).All(entry => IsIn(longer, entry)))
        {
            return behind.Count == 0 ? longer : longer.With(behind);
        }

        var entries = DistinctEntries.Of([.. longer.Lines, .. shorter.Lines], []);
        using var stream = new MemoryStream();
        foreach (var entry in entries)
        {
            Add(stream, entry.Line);
        }

        return LogDocument.OfPlain(stream.ToArray(), longer.Kinds, entries);
    }

    /// <summary>Whether a log in order has this very line.</summary>
    private static bool IsIn(LogDocument log, Entry entry)
    {
        var (low, high) = (0, log.Entries.Count - 1);
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var order = EntryOrder.Instance.Compare(log.Entries[middle], entry);
            if (order == 0)
            {
                return true;
            }

            (low, high) = order < 0 ? (middle + 1, high) : (low, middle - 1);
        }

        return false;
    }

    private static void Add(MemoryStream stream, ReadOnlyMemory<byte> line)
    {
        stream.Write(line.Span);
        stream.WriteByte((byte)'\n');
    }
}
