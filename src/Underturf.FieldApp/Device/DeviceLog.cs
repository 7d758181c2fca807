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

    private static readonly LogDocument nothing = LogDocument.Read(ReadOnlyMemory<byte>.Empty);

    private readonly Dictionary<string, KeptLog> kept = new(StringComparer.Ordinal);
    private string writer = "";
    private double last;
    private (LogDocument? Log, long UpTo, long Notes) counted;
    private PropertyHistory? history;
    private LogDocument document = nothing;

    private Problem? unopened = new("this device", "has not opened its store of notes yet", "Wait a moment");
    private Problem? unstored;

    /// <summary>Why the log in hand is not kept on this device; it can then be read, but nothing can be noted.</summary>
    public Problem? Refused => unopened ?? unstored;

    /// <summary>Why nothing at all is kept on this device.</summary>
    public Problem? Unopened => unopened;

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

    public bool IsEmpty => Document.Lines.All(line => line.IsBlank);

    /// <summary>What of the log cannot be used, in a few words; nothing where all of it can.</summary>
    public string? Damage => Document.Problems.Count(problem => problem.Severity == Severity.Error) switch
    {
        0 => null,
        1 => "log damaged in 1 place",
        var places => $"log damaged in {places} places",
    };

    /// <summary>Where the newest notes from elsewhere came from.</summary>
    public string Source { get; private set; } = "";

    /// <summary>Whether the log in hand came from the server that the page came from.</summary>
    public bool IsFromServer => Source == Served;

    /// <summary>What people call the property.</summary>
    public string Name => History.Facts.Property?.Name ?? Document.Property ?? "";

    /// <summary>Whether notes can be stored in this log.</summary>
    public bool TakesNotes => Refused is null && Document.Property is not null;

    /// <summary>Notes written on this device that stand in no copy elsewhere, as far as it knows; one that was taken back is one with its taking back.</summary>
    public long NotBackedUp
    {
        get
        {
            var upTo = Kept?.BackedUp ?? 0;
            if (!ReferenceEquals(counted.Log, Document) || counted.UpTo != upTo)
            {
                counted = (Document, upTo, NotesSince(Document, upTo));
            }

            return counted.Notes;
        }
    }

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

        var stored = gone ? await device.ReplaceAsync(property, united.ToBytes()) : await device.AddAsync(property, StoredLines.Joined(added), written: null, desk: null);
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
