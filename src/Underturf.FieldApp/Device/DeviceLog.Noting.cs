using Underturf.FieldLog;
using Underturf.Property;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>Notes are sealed and stored, all that one tap says at once, and with them the desk without what was stored: a page that is killed then brings none of it back to be stored twice.</summary>
public sealed partial class DeviceLog
{
    /// <summary>How often a note is sealed anew where another page was quicker; with a lock around it that does not happen at all.</summary>
    private const int Attempts = 4;

    /// <summary>Seals a fact and stores it. The entry is on the device for good when it answers.</summary>
    /// <param name="at">When it was so; the time of noting where nothing is given.</param>
    public Task<Outcome<Entry>> NoteAsync(Fact fact, DateTimeOffset? at = null) => NoteAsync(_ => fact, at);

    /// <summary>Seals a fact and stores it, as above.</summary>
    /// <param name="write">Writes the fact, given an id for a thing that nobody has noted before: it is that of the entry, so no two can be the same.</param>
    /// <param name="at">When it was so; the time of noting where nothing is given.</param>
    public async Task<Outcome<Entry>> NoteAsync(Func<string, Fact> write, DateTimeOffset? at = null)
    {
        var stored = await NoteAllAsync([write], at);
        return stored.Succeeded ? stored.Value[0] : stored.Problem!;
    }

    /// <summary>Seals facts and stores them: all of them, or none.</summary>
    /// <param name="writes">Each writes one fact, as above.</param>
    /// <param name="at">When it was so; the time of noting where nothing is given.</param>
    /// <param name="desk">The desk as it lies once they are stored; it is kept with them. Nothing where it is not to be kept.</param>
    public async Task<Outcome<IReadOnlyList<Entry>>> NoteAllAsync(IReadOnlyList<Func<string, Fact>> writes, DateTimeOffset? at = null, string? desk = null)
    {
        if (Unfit(at) is { } unfit)
        {
            return unfit;
        }

        await using var alone = await device.AloneAsync();
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            if (await RefreshAloneAsync() is { } unread)
            {
                return unread;
            }

            var sealedAll = SealAll(writes, at);
            if (!sealedAll.Succeeded)
            {
                return sealedAll.Problem!;
            }

            var entries = sealedAll.Value;
            var stored = await device.AddAsync(Document.Property!, StoredLines.Joined(entries.Select(entry => entry.Line)), entries[0].Id, desk);
            if (!stored.Succeeded)
            {
                return stored.Problem!;
            }

            if (stored.Value is { } number)
            {
                (Document, history, last) = (Document.With(entries), GrownBy(entries), number);
                return sealedAll;
            }
        }

        return new Problem("this note", "was crowded out by other pages of this browser", "Close the other pages and store it again");
    }

    private Problem? Unfit(DateTimeOffset? at) =>
        Refused is { } refused ? refused
        : Document.Property is null ? new Problem("this log", "is of no property that could be read", "Open another log")
        : at?.ToUnixTimeMilliseconds() > device.WallMilliseconds ? new Problem("the time of this note", "lies ahead of the clock of this device", "Choose a moment that has been, or leave it empty for now")
        : null;

    private Outcome<IReadOnlyList<Entry>> SealAll(IReadOnlyList<Func<string, Fact>> writes, DateTimeOffset? at)
    {
        var (entries, before, noted) = (new List<Entry>(), Document.LastHeader(Writer), Document.LastNoted ?? default);
        foreach (var write in writes)
        {
            noted = HybridTime.Next(noted, device.WallMilliseconds);
            var entry = Pen.Seal(Document.Property!, Writer, before, noted, Signed(write($"{Writer}-{(before?.Id.Seq ?? 0) + 1}")), at);
            if (!entry.Succeeded)
            {
                return entry.Problem!;
            }

            entries.Add(entry.Value);
            before = entry.Value.Header;
        }

        return entries;
    }

    /// <summary>The history folded on, where the entries only add to it.</summary>
    private PropertyHistory? GrownBy(IReadOnlyList<Entry> entries) =>
        entries.Any(entry => entry.Fact is StrikeFact or RestoreFact) ? null : entries.Aggregate(history, (grown, entry) => grown?.With(entry));

    private Fact Signed(Fact fact) => By is not null && fact.By is null ? fact with { By = By } : fact;
}
