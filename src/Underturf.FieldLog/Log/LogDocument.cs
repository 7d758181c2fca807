using Underturf.Quantities;

namespace Underturf.FieldLog;

/// <summary>A field log as it was read: its exact bytes, what they say, and what is wrong with them.</summary>
public sealed class LogDocument
{
    private readonly GrownList<byte> bytes;
    private readonly GrownList<LogLine> lines;
    private readonly GrownList<Entry> entries;
    private readonly GrownList<Entry> standing;
    private readonly Lazy<LastHeaders> lastHeaders;
    private readonly KindCatalogue kinds;
    private readonly bool sound;

    /// <param name="read">The lines of the bytes.</param>
    /// <param name="found">What is wrong with those lines by themselves.</param>
    private LogDocument(ReadOnlyMemory<byte> bytes, KindCatalogue kinds, IReadOnlyList<LogLine> read, IReadOnlyList<Problem> found)
    {
        var problems = found.ToList();
        this.bytes = GrownList<byte>.Of(bytes);
        this.kinds = kinds;
        sound = found.Count == 0;
        lines = GrownList<LogLine>.Of(read);
        entries = GrownList<Entry>.Of(DistinctEntries.Of(Lines, problems));
        Property = MostNamed(Entries);
        Chains.Check(Entries, problems);
        Strangers(problems);
        var before = problems.Count;
        standing = GrownList<Entry>.Of(FieldLog.Standing.Of([.. Entries.Where(e => e.Header.Property == Property)], problems));
        lastHeaders = new Lazy<LastHeaders>(() => LastHeaders.Of(Entries, Property));
        HasIdleWords = problems.Count > before;
        if (Lines.All(line => line.IsBlank))
        {
            problems.Add(new Problem(
                "line 1",
                "is where the log should begin, but the file is empty",
                "Note a first fact with `underturf note`, or give another file"));
        }

        Problems = problems;
    }

    /// <summary>The log grown by entries that change nothing of what is said of it.</summary>
    private LogDocument(LogDocument before, GrownList<byte> bytes, GrownList<LogLine> lines, Entry[] fresh, GrownList<Entry> standing)
    {
        (this.bytes, this.lines, entries, this.standing, kinds, sound) = (bytes, lines, before.entries.With(fresh), standing, before.kinds, true);
        (Property, Problems) = (before.Property, before.Problems);
        lastHeaders = new Lazy<LastHeaders>(fresh.Aggregate(before.lastHeaders.Value, (last, entry) => last.With(entry)));
    }

    /// <summary>Every line, bad ones too.</summary>
    public IReadOnlyList<LogLine> Lines => lines;

    /// <summary>Every whole entry once, in the order of noting; both sides of a fork; those without a readable fact too.</summary>
    public IReadOnlyList<Entry> Entries => entries;

    /// <summary>The entries that count: known facts of this property, those struck and the strikes themselves left out.</summary>
    public IReadOnlyList<Entry> Standing => standing;

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

    /// <summary>A log of lines that were read from these very bytes.</summary>
    internal static LogDocument OfRead(ReadOnlyMemory<byte> bytes, KindCatalogue kinds, IReadOnlyList<LogLine> read, IReadOnlyList<Problem> found) => new(bytes, kinds, read, found);

    /// <summary>The header that a new entry of this writer follows, or nothing where it would be the first.</summary>
    public Header? LastHeader(string writer) => lastHeaders.Value.Of(writer);

    /// <summary>The exact bytes that were read or made.</summary>
    public ReadOnlyMemory<byte> ToBytes() => bytes.AsMemory();

    /// <summary>The log with lines added at its end and nothing before them changed, except that a last line without end gets one.</summary>
    public LogDocument With(params IEnumerable<Entry> entries)
    {
        using var added = new MemoryStream();
        foreach (var entry in entries)
        {
            added.Write(entry.Line.Span);
            added.WriteByte((byte)'\n');
        }

        var open = bytes.Count > 0 && bytes[^1] != (byte)'\n';
        var all = bytes.With([.. open ? "\n"u8 : [], .. added.ToArray()]);
        return sound && !open ? Grown(all, added.ToArray()) : Read(all.AsMemory(), kinds);
    }

    /// <summary>Only what was added is read, and from bytes of its own, so that no entry holds on to a whole log; all is gone through where there is something to say of it.</summary>
    private LogDocument Grown(GrownList<byte> all, ReadOnlyMemory<byte> added)
    {
        var problems = new List<Problem>();
        var fresh = new LogLines(kinds).Read(added, problems);
        if (problems.Count > 0)
        {
            return Read(all.AsMemory(), kinds);
        }

        Entry[] read = [.. fresh.Select(line => line.Entry!)];
        var longer = lines.With([.. fresh.Select(line => line with { Number = Lines.Count + line.Number })]);
        return LogGrowth.Standing(this, standing, lastHeaders.Value, read) is { } stands
            ? new LogDocument(this, all, longer, read, stands)
            : new LogDocument(all.AsMemory(), kinds, longer, []);
    }

    /// <summary>A log of lines that were read before and are plain, under new bytes.</summary>
    internal static LogDocument OfPlain(ReadOnlyMemory<byte> bytes, KindCatalogue kinds, IEnumerable<Entry> entries) =>
        new(bytes, kinds, [.. entries.Select((entry, i) => new LogLine(i + 1, entry.Line, entry))], []);

    /// <summary>The same log with its entries in the order of noting and each line once, as merging leaves it; itself where it is so already.</summary>
    public LogDocument InOrder() =>
        Lines.Count == Entries.Count && Lines.Zip(Entries).All(pair => ReferenceEquals(pair.First.Entry, pair.Second))
            ? this
            : LogMerge.Union(this, Read(ReadOnlyMemory<byte>.Empty, kinds));

    /// <summary>Whether some strike or restore had no effect.</summary>
    internal bool HasIdleWords { get; }

    /// <summary>Whether the lines are the entries in their order, each once, and nothing is to be said of any line.</summary>
    internal bool IsPlain => sound && Lines.Count == Entries.Count && Lines.Zip(Entries).All(pair => ReferenceEquals(pair.First.Entry, pair.Second));

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
