using System.Text;

namespace Underturf.FieldLog;

/// <summary>
/// What of a long log is read first, so that one can note before all of it is: whatever says what there is and how it is called. Left for later is what
/// only says what was seen, by far the most of a long log, and strikes of that. Nothing is said of the property by it that the whole log would not say,
/// except by what was struck or restored beyond it; so it is good for the forms of notes and for nothing that is worked out.
/// </summary>
public static class LogGlance
{
    /// <summary>A log with fewer lines is read whole.</summary>
    private const int FewLines = 1_000;

    private static ReadOnlySpan<byte> Kind => ",\"body\":{\"kind\":\""u8;

    private static ReadOnlySpan<byte> Target => "\"entry\":\""u8;

    /// <summary>A log of the lines that are read first; nothing where that would save little.</summary>
    /// <param name="writer">Who notes here: of these lines the last is among them, because the next one follows it. The last of all is, too.</param>
    public static LogDocument? Of(ReadOnlyMemory<byte> bytes, string writer)
    {
        var lines = LogLines.Cut(bytes).ToList();
        if (lines.Count < FewLines)
        {
            return null;
        }

        var own = Encoding.UTF8.GetBytes($"\"writer\":\"{writer}\",");
        var (first, words, last) = (new HashSet<int>(), new List<int>(), -1);
        foreach (var (i, line) in lines.Index())
        {
            last = line.Span.IndexOf(own) >= 0 ? i : last;
            switch (KindOf(line.Span))
            {
                case Weight.Thing: first.Add(i); break;
                case Weight.Word: words.Add(i); break;
            }
        }

        first.UnionWith(last < 0 ? [lines.Count - 1] : [last, lines.Count - 1]);
        return (first.Count + words.Count) * 2 > lines.Count ? null : Of(lines, first, words);
    }

    private static LogDocument Of(List<ReadOnlyMemory<byte>> lines, HashSet<int> first, List<int> words)
    {
        var glance = LogDocument.Read(Joined(first.Order().Select(i => lines[i])));
        var known = glance.Entries.Select(entry => entry.Id.ToString()).ToHashSet(StringComparer.Ordinal);
        List<int> about = [.. words.Where(i => known.Contains(Aim(lines[i].Span)))];
        return about.Count == 0 ? glance : LogDocument.Read(Joined(first.Union(about).Order().Select(i => lines[i])));
    }

    private enum Weight
    {
        Thing,
        Seen,
        Word,
    }

    private static Weight KindOf(ReadOnlySpan<byte> line)
    {
        var at = line.IndexOf(Kind);
        var kind = at < 0 ? [] : line[(at + Kind.Length)..];
        return kind.StartsWith("reading\""u8) || kind.StartsWith("test\""u8) || kind.StartsWith("look\""u8) || kind.StartsWith("watch\""u8) || kind.StartsWith("catch\""u8) ? Weight.Seen
            : kind.StartsWith("strike\""u8) || kind.StartsWith("restore\""u8) ? Weight.Word
            : Weight.Thing;
    }

    /// <summary>The entry that a strike or restore speaks of; empty where it is not written as plainly as here.</summary>
    private static string Aim(ReadOnlySpan<byte> line)
    {
        var at = line.IndexOf(Target);
        var aim = at < 0 ? [] : line[(at + Target.Length)..];
        var end = aim.IndexOf((byte)'"');
        return end < 0 ? "" : Encoding.UTF8.GetString(aim[..end]);
    }

    private static byte[] Joined(IEnumerable<ReadOnlyMemory<byte>> lines)
    {
        using var joined = new MemoryStream();
        foreach (var line in lines)
        {
            joined.Write(line.Span);
            joined.WriteByte(LogLines.LineFeed);
        }

        return joined.ToArray();
    }
}
