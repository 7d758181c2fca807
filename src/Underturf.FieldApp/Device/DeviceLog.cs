using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>
/// The log that a page works on. What is noted is stored on the device first and shown afterwards; whatever another page of the
/// device stored meanwhile is taken in before.
/// </summary>
public sealed partial class DeviceLog(IDevice device)
{
    /// <summary>What the page calls the log of the server that it came from.</summary>
    public const string Served = "Served log";

    /// <summary>How often a note is sealed anew where another page was quicker; with a lock around it that does not happen at all.</summary>
    private const int Attempts = 4;

    private static readonly LogDocument nothing = LogDocument.Read(ReadOnlyMemory<byte>.Empty);

    private readonly Dictionary<string, KeptLog> kept = new(StringComparer.Ordinal);
    private string writer = "";
    private double last;
    private PropertyHistory? history;
    private LogDocument document = nothing;

    private Problem? unopened = new("this device", "has not opened its store of notes yet", "Wait a moment");
    private Problem? unstored;

    /// <summary>Why the log in hand is not kept on this device; it can then be read, but nothing can be noted.</summary>
    public Problem? Refused => unopened ?? unstored;

    /// <summary>True where the browser has promised not to clear the notes when space runs low.</summary>
    public bool Promised { get; private set; }

    /// <summary>What lay on the desk when the device was opened.</summary>
    public string? Desk { get; private set; }

    /// <summary>Who notes here; it stands on every note that names nobody else. Nothing where nobody said.</summary>
    public string? By { get; set; }

    public LogDocument Document
    {
        get => document;
        private set => (document, history) = (value, null);
    }

    public PropertyHistory History => history ??= PropertyHistory.Fold(Document.Standing);

    public bool IsEmpty => Document.Lines.Count == 0;

    /// <summary>Where the newest notes from elsewhere came from.</summary>
    public string Source { get; private set; } = "";

    /// <summary>Whether the log in hand came from the server that the page came from.</summary>
    public bool IsFromServer => Source == Served;

    /// <summary>What people call the property.</summary>
    public string Name => History.Facts.Property?.Name ?? Document.Property ?? "";

    /// <summary>Whether notes can be stored in this log.</summary>
    public bool TakesNotes => Refused is null && Document.Property is not null;

    /// <summary>Notes written on this device that stand in no copy elsewhere, as far as it knows.</summary>
    public long NotBackedUp => Math.Max(0, Written - (Kept?.BackedUp ?? 0));

    private long Written => Document.LastHeader(Writer)?.Id.Seq ?? 0;

    /// <summary>Who writes in the log in hand.</summary>
    private string Writer => WriterOf(Document.Property);

    private KeptLog? Kept => Document.Property is { } property ? kept.GetValueOrDefault(property) : null;

    /// <summary>Whether a log from elsewhere is of the property that is open.</summary>
    public bool IsOf(ReadOnlyMemory<byte> elsewhere) => Document.Property is { } property && LogDocument.Read(elsewhere).Property == property;

    /// <summary>Opens the device's store, and the log that was open last, if any.</summary>
    public async Task OpenDeviceAsync()
    {
        var opened = await device.OpenAsync();
        unopened = opened.Problem;
        if (!opened.Succeeded)
        {
            return;
        }

        (writer, Promised, Desk) = (opened.Value.Writer, opened.Value.Promised, opened.Value.Desk);
        foreach (var log in opened.Value.Logs)
        {
            kept[log.Property] = log;
        }

        if (opened.Value.Open is { } property && kept.TryGetValue(property, out var last) && !last.IsGone)
        {
            await using var alone = await device.AloneAsync();
            unstored = await TurnToAsync(property);
        }
    }

    /// <summary>
    /// Takes in a log from elsewhere: united with what is kept of the same property, or opened beside it. What cannot be stored is shown all the same.
    /// </summary>
    public Task TakeInAsync(string source, ReadOnlyMemory<byte> bytes) => TakeInAsync(source, LogDocument.Read(bytes));

    /// <summary>Takes in a log, as above.</summary>
    public async Task TakeInAsync(string source, LogDocument incoming)
    {
        if (unopened is not null || incoming.Property is not { } property)
        {
            (Document, Source, last, unread) = (incoming, source, 0, null);
            return;
        }

        await ReadWholeAsync();
        await using var alone = await device.AloneAsync();
        unstored = property == Document.Property && unstored is null ? await RefreshAloneAsync() : await TurnToAsync(property, whole: true);
        unstored ??= await StoreUnionAsync(property, incoming);
        Source = source;
        unstored ??= await RememberAsync(Math.Max(Kept?.BackedUp ?? 0, incoming.LastHeader(WriterOf(property))?.Id.Seq ?? 0));
        if (unstored is not null)
        {
            Document = LogMerge.Union(Document, incoming);
        }
    }

    /// <summary>Counts entries that are held elsewhere as backed up.</summary>
    public async Task BackedUpAsync(IReadOnlyList<Entry> elsewhere)
    {
        var upTo = elsewhere.Where(entry => entry.Id.Writer == Writer).Select(entry => entry.Id.Seq).DefaultIfEmpty().Max();
        if (upTo > (Kept?.BackedUp ?? 0))
        {
            unstored ??= await RememberAsync(upTo);
        }
    }

    /// <summary>Takes in what other pages stored. True where that was something.</summary>
    public async Task<bool> RefreshAsync()
    {
        await using var alone = await device.AloneAsync();
        var before = Document;
        return await RefreshAloneAsync() is null && !ReferenceEquals(before, Document);
    }

    /// <summary>Seals a fact and stores it. The entry is on the device for good when it answers.</summary>
    /// <param name="at">When it was so; the time of noting where nothing is given.</param>
    public Task<Outcome<Entry>> NoteAsync(Fact fact, DateTimeOffset? at = null) => NoteAsync(_ => fact, at);

    /// <summary>Seals a fact and stores it, as above.</summary>
    /// <param name="write">Writes the fact, given an id for a thing that nobody has noted before: it is that of the entry, so no two can be the same.</param>
    /// <param name="at">When it was so; the time of noting where nothing is given.</param>
    public async Task<Outcome<Entry>> NoteAsync(Func<string, Fact> write, DateTimeOffset? at = null)
    {
        if (Refused is { } refused)
        {
            return refused;
        }

        if (Document.Property is null)
        {
            return new Problem("this log", "is of no property that could be read", "Open another log");
        }

        if (at?.ToUnixTimeMilliseconds() > device.WallMilliseconds)
        {
            return new Problem("the time of this note", "lies ahead of the clock of this device", "Choose a moment that has been, or leave it empty for now");
        }

        await using var alone = await device.AloneAsync();
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            if (await RefreshAloneAsync() is { } unread)
            {
                return unread;
            }

            var entry = Seal(write($"{Writer}-{Written + 1}"), at);
            if (!entry.Succeeded)
            {
                return entry;
            }

            var stored = await device.AddAsync(Document.Property!, StoredLines.Joined([entry.Value.Line]), entry.Value.Id);
            if (!stored.Succeeded)
            {
                return stored.Problem!;
            }

            if (stored.Value is { } number)
            {
                (Document, history, last) = (Document.With(entry.Value), GrownBy(entry.Value), number);
                return entry;
            }
        }

        return new Problem("this note", "was crowded out by other pages of this browser", "Close the other pages and store it again");
    }

    /// <summary>Hands out the whole log as a file that the command line tool reads.</summary>
    public async Task<Problem?> HandOutAsync()
    {
        await ReadWholeAsync();
        var (name, upTo) = ($"{FileName(Document.Property)}.jsonl", Written);
        await device.HandOutAsync(name, Document.ToBytes());
        return TakesNotes ? await RememberAsync(upTo) : null;
    }

    /// <summary>Hands out the whole log together with something else.</summary>
    /// <param name="handOut">Hands out these bytes under this name, which has no ending yet.</param>
    public async Task<Problem?> HandOutAsync<T>(Func<string, ReadOnlyMemory<byte>, Task<Outcome<T>>> handOut)
    {
        await ReadWholeAsync();
        var upTo = Written;
        var handed = await handOut(FileName(Document.Property), Document.ToBytes());
        return handed.Succeeded && TakesNotes ? await RememberAsync(upTo) : handed.Problem;
    }

    /// <summary>The history folded on, where the entry only adds to it.</summary>
    private PropertyHistory? GrownBy(Entry entry) => entry.Fact is StrikeFact or RestoreFact ? null : history?.With(entry);

    private Outcome<Entry> Seal(Fact fact, DateTimeOffset? at) => Pen.Seal(
        Document.Property!,
        Writer,
        Document.LastHeader(Writer),
        HybridTime.Next(Document.LastNoted ?? default, device.WallMilliseconds),
        Signed(fact),
        at);

    private Fact Signed(Fact fact) => By is not null && fact.By is null ? fact with { By = By } : fact;

    private async Task<Problem?> StoreUnionAsync(string property, LogDocument incoming)
    {
        var united = LogMerge.Union(Document, incoming);
        var (before, after) = (StoredLines.ByHead(Document), StoredLines.ByHead(united));
        var added = after.Where(line => !before.ContainsKey(line.Key)).Select(line => line.Value).ToList();
        // A body that was erased elsewhere must go here too, so the line that has it is not kept.
        var gone = before.Keys.Any(line => !after.ContainsKey(line));
        if (added.Count == 0 && !gone)
        {
            return null;
        }

        var stored = gone ? await device.ReplaceAsync(property, united.ToBytes()) : await device.AddAsync(property, StoredLines.Joined(added), null);
        if (stored.Succeeded)
        {
            (Document, last) = (united, stored.Value ?? last);
        }

        return stored.Problem;
    }

    private async Task<Problem?> RememberAsync(long backedUp)
    {
        var log = (Kept ?? new KeptLog(Document.Property!, Source, backedUp)) with { Source = Source, BackedUp = backedUp, Name = Name, IsGone = false };
        kept[log.Property] = log;
        return await device.RememberAsync(log, isOpen: true);
    }

    private static string FileName(string? property)
    {
        var plain = string.Concat((property ?? "log").Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '-'));
        return plain.Trim('-') is { Length: > 0 } name ? name : "log";
    }
}
