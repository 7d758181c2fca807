namespace Underturf.FieldLog;

/// <summary>Of each writer of a property the header that its next entry follows.</summary>
internal sealed class LastHeaders
{
    private readonly Dictionary<string, (Header Last, bool Plain)> byWriter;

    private LastHeaders(Dictionary<string, (Header Last, bool Plain)> byWriter) => this.byWriter = byWriter;

    public static LastHeaders Of(IEnumerable<Entry> entries, string? property)
    {
        var found = new Dictionary<string, (Header Last, bool Plain)>(StringComparer.Ordinal);
        foreach (var header in entries.Select(e => e.Header).Where(h => h.Property == property))
        {
            found[header.Id.Writer] = found.TryGetValue(header.Id.Writer, out var before) ? After(before, header) : (header, true);
        }

        return new LastHeaders(found);
    }

    /// <summary>The header with the highest number, the first of several; nothing where nobody of that name wrote.</summary>
    public Header? Of(string writer) => byWriter.TryGetValue(writer, out var known) ? known.Last : null;

    /// <summary>Whether an entry is the next of its writer, after one and only one before it.</summary>
    public bool IsNext(Entry entry) => byWriter.TryGetValue(entry.Id.Writer, out var known)
        ? known.Plain && entry.Id.Seq == known.Last.Id.Seq + 1 && entry.Header.Previous == known.Last.Hash && entry.Header.Noted.CompareTo(known.Last.Noted) > 0
        : entry.Id.Seq == 1 && entry.Header.Previous.Length == 0;

    public LastHeaders With(Entry entry)
    {
        var header = entry.Header;
        return new LastHeaders(new Dictionary<string, (Header Last, bool Plain)>(byWriter, StringComparer.Ordinal)
        {
            [header.Id.Writer] = byWriter.TryGetValue(header.Id.Writer, out var before) ? After(before, header) : (header, true),
        });
    }

    private static (Header Last, bool Plain) After((Header Last, bool Plain) before, Header header) =>
        header.Id.Seq > before.Last.Id.Seq ? (header, before.Plain) : (before.Last, false);
}
