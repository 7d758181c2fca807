namespace Underturf.FieldLog;

/// <summary>Takes the body of an entry out for privacy. The header stays, so that the chain stays whole.</summary>
public static class Erasure
{
    /// <summary>The entry without its body, sealed anew. Put it in place of the old line, or merge it in: the erased copy wins.</summary>
    public static Entry Erase(Entry entry)
    {
        if (entry.Erased)
        {
            return entry;
        }

        var parts = LineForm.Split(entry.Line) ?? throw new ArgumentException($"{entry.Id} does not carry a sealed line", nameof(entry));
        var line = LineForm.Seal(parts.Head.Span, "null"u8);
        return new Entry(entry.Header, "", 0, null, entry.Header.Noted.Moment, line);
    }

    /// <summary>The log with that entry erased; nothing else in it changes.</summary>
    public static LogDocument Erase(LogDocument document, Entry entry)
    {
        var erased = Erase(entry);
        return LogMerge.Union(document, LogDocument.Read(new ReadOnlyMemory<byte>([.. erased.Line.Span, (byte)'\n']), document.Kinds));
    }
}
