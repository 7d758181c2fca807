using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>A field log as it was read: its exact bytes, what they say, and what is wrong with them.</summary>
public sealed class LogDocument
{
    private readonly ReadOnlyMemory<byte> bytes;
    private readonly KindCatalogue kinds;
    private readonly bool sound;

    /// <param name="read">The lines of the bytes.</param>
    /// <param name="found">What is wrong with those lines by themselves.</param>
    private LogDocument(ReadOnlyMemory<byte> bytes, KindCatalogue kinds, IReadOnlyList<LogLine> read, IReadOnlyList<Problem> found)
    {
        var problems = found.ToList();
        this.bytes = bytes;
        this.kinds = kinds;
        sound = found.Count == 0;
        Lines = read;
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
    public static LogDocument Read(ReadOnlyMemory<byte> bytes, KindCatalogue? kinds = null)
    {
        var known = kinds ?? KindCatalogue.Standard;
        var problems = new List<Problem>();
        return new LogDocument(bytes, known, new LogLines(known).Read(bytes, problems), problems);
    }

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

        var added = (int)stream.Length;
        foreach (var entry in entries)
        {
            stream.Write(entry.Line.Span);
            stream.WriteByte((byte)'\n');
        }

        return Grown(stream.ToArray(), added);
    }

    /// <summary>Only what was added is read, unless there is something to say of the lines before or of those: a long log then takes a note at once.</summary>
    private LogDocument Grown(ReadOnlyMemory<byte> all, int added)
    {
        var problems = new List<Problem>();
        var fresh = sound && added == bytes.Length ? new LogLines(kinds).Read(all[added..], problems) : [];
        return sound && added == bytes.Length && problems.Count == 0
            ? new LogDocument(all, kinds, [.. Lines, .. fresh.Select(line => line with { Number = Lines.Count + line.Number })], [])
            : Read(all, kinds);
    }

    /// <summary>The same log with its entries in the order of noting and each line once, as merging leaves it; itself where it is so already.</summary>
    public LogDocument InOrder() =>
        Lines.Count == Entries.Count && Lines.Zip(Entries).All(pair => ReferenceEquals(pair.First.Entry, pair.Second))
            ? this
            : LogMerge.Union(this, Read(ReadOnlyMemory<byte>.Empty, kinds));

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
