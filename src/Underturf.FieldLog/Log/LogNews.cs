using System.Text;

namespace Underturf.FieldLog;

/// <summary>What another copy of a log has beyond one that was read: a line that is the same to the byte is not read again.</summary>
/// <param name="Fresh">The lines that are not the same, as they stand.</param>
/// <param name="Known">The entries whose very lines stand there.</param>
public sealed record LogNews(ReadOnlyMemory<byte> Fresh, IReadOnlyList<Entry> Known)
{
    /// <summary>Goes through a copy: mostly it has the same lines in the same order.</summary>
    public static LogNews Of(ReadOnlyMemory<byte> copy, LogDocument log)
    {
        var (known, next) = (new List<Entry>(), 0);
        Dictionary<string, Entry>? byTail = null;
        using var fresh = new MemoryStream();
        foreach (var line in LogLines.Cut(copy))
        {
            var entry = next < log.Entries.Count && IsOf(log.Entries[next], line) ? log.Entries[next]
                : (byTail ??= ByTail(log)).GetValueOrDefault(Tail(line.Span)) is { } found && IsOf(found, line) ? found : null;
            if (entry is null)
            {
                fresh.Write(line.Span);
                fresh.WriteByte(LogLines.LineFeed);
            }
            else
            {
                known.Add(entry);
                next++;
            }
        }

        return new LogNews(fresh.ToArray(), known);
    }

    private static bool IsOf(Entry entry, ReadOnlyMemory<byte> line) => entry.Line.Span.SequenceEqual(line.Span);

    private static Dictionary<string, Entry> ByTail(LogDocument log)
    {
        var byTail = new Dictionary<string, Entry>(StringComparer.Ordinal);
        foreach (var entry in log.Entries)
        {
            byTail[Tail(entry.Line.Span)] = entry;
        }

        return byTail;
    }

    /// <summary>The end of a line, where its digest stands.</summary>
    private static string Tail(ReadOnlySpan<byte> line) => Encoding.UTF8.GetString(line.Length < LineForm.TailLength ? line : line[^LineForm.TailLength..]);
}
