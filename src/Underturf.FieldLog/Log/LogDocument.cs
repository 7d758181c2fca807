using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>A field log as it was read: its exact bytes, what they say, and what is wrong with them.</summary>
public sealed class LogDocument
{
    private readonly ReadOnlyMemory<byte> bytes;
    private readonly KindCatalogue kinds;

    private LogDocument(ReadOnlyMemory<byte> bytes, KindCatalogue kinds)
    {
        var problems = new List<Problem>();
        this.bytes = bytes;
        this.kinds = kinds;
        Lines = new LogLines(kinds).Read(bytes, problems);
        Entries = DistinctEntries.Of(Lines, problems);
        Property = MostNamed(Entries);
        Chains.Check(Entries, problems);
        Strangers(problems);
        Standing = FieldLog.Standing.Of([.. Entries.Where(e => e.Header.Property == Property)], problems);
        if (Lines.All(line => line.IsBlank))
        {
            problems.Add(new Problem(
                "line 1",
                "is where the log should begin, but the file is empty",
                "Note a first fact with `underturf note`, or give another file"));
        }

        Problems = problems;
    }

    /// <summary>Every line, bad ones too.</summary>
    public IReadOnlyList<LogLine> Lines { get; }

    /// <summary>Every whole entry once, in the order of noting; both sides of a fork; those without a readable fact too.</summary>
    public IReadOnlyList<Entry> Entries { get; }

    /// <summary>The entries that count: known facts of this property, those struck and the strikes themselves left out.</summary>
    public IReadOnlyList<Entry> Standing { get; }

    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>The property that the log is about: the one that most entries name. Nothing where there is no entry.</summary>
    public string? Property { get; }

    /// <summary>The latest time of noting by anybody; a new note comes after it.</summary>
    public HybridTime? LastNoted => Entries is [.., var last] ? last.Header.Noted : null;

    /// <summary>Reads a log. Whatever the bytes are, there is an answer; it does not throw.</summary>
    /// <param name="kinds">The kinds to know; the standard ones where nothing is given.</param>
    public static LogDocument Read(ReadOnlyMemory<byte> bytes, KindCatalogue? kinds = null) => new(bytes, kinds ?? KindCatalogue.Standard);

    /// <summary>The header that a new entry of this writer follows, or nothing where it would be the first.</summary>
    public Header? LastHeader(string writer) => Entries
        .Where(e => e.Id.Writer == writer && e.Header.Property == Property)
        .MaxBy(e => e.Id.Seq)?.Header;

    /// <summary>The exact bytes that were read or made.</summary>
    public ReadOnlyMemory<byte> ToBytes() => bytes;

    /// <summary>The log with lines added at its end and nothing before them changed, except that a last line without end gets one.</summary>
    public LogDocument With(params IEnumerable<Entry> entries)
    {
        using var stream = new MemoryStream();
        stream.Write(bytes.Span);
        if (bytes.Length > 0 && bytes.Span[^1] != (byte)'\n')
        {
            stream.WriteByte((byte)'\n');
        }

        foreach (var entry in entries)
        {
            stream.Write(entry.Line.Span);
            stream.WriteByte((byte)'\n');
        }

        return Read(stream.ToArray(), kinds);
    }

    /// <summary>The kinds that the log was read with.</summary>
    internal KindCatalogue Kinds => kinds;

    private static string? MostNamed(IEnumerable<Entry> entries) => entries
        .GroupBy(e => e.Header.Property, StringComparer.Ordinal)
        .OrderByDescending(g => g.Count())
        .ThenBy(g => g.Key, StringComparer.Ordinal)
        .FirstOrDefault()?.Key;

    private void Strangers(List<Problem> problems)
    {
        foreach (var group in Entries.Where(e => e.Header.Property != Property).GroupBy(e => e.Header.Property, StringComparer.Ordinal))
        {
            problems.Add(new Problem(
                group.First().Id.ToString(),
                $"and {group.Count() - 1} more entries are about the property '{group.Key}', this log is about '{Property}'; they are kept but not used",
                "Keep one log for each property"));
        }
    }
}
