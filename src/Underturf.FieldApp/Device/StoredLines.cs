using Underturf.FieldLog;

namespace Underturf.FieldApp;

/// <summary>Lines of a log as the device stores them.</summary>
internal static class StoredLines
{
    /// <summary>Each line once, by its head where it has one: the head fixes the body, unless that was erased.</summary>
    public static Dictionary<string, ReadOnlyMemory<byte>> ByHead(LogDocument log)
    {
        var lines = new Dictionary<string, ReadOnlyMemory<byte>>(StringComparer.Ordinal);
        foreach (var line in log.Lines.Where(line => !line.IsBlank))
        {
            var key = line.Entry is { } entry ? $"{entry.Header.Hash} {entry.Erased}" : Convert.ToBase64String(line.Bytes.Span);
            lines[key] = line.Entry?.Line ?? line.Bytes;
        }

        return lines;
    }

    /// <summary>One after the other, each ended.</summary>
    public static ReadOnlyMemory<byte> Joined(IEnumerable<ReadOnlyMemory<byte>> lines)
    {
        using var joined = new MemoryStream();
        foreach (var line in lines)
        {
            joined.Write(line.Span);
            joined.WriteByte((byte)'\n');
        }

        return joined.ToArray();
    }
}
