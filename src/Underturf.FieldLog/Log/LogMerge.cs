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

    private static void Add(MemoryStream stream, ReadOnlyMemory<byte> line)
    {
        stream.Write(line.Span);
        stream.WriteByte((byte)'\n');
    }
}
