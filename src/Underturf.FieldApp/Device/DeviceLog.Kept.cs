using Underturf.FieldLog;
using Underturf.Quantities;

namespace Underturf.FieldApp;

/// <summary>The logs that are kept on this device, the one in hand among them: opened, handed out, taken off.</summary>
public sealed partial class DeviceLog
{
    /// <summary>Those that are here, by name.</summary>
    public IReadOnlyList<KeptLog> KeptHere => [.. kept.Values.Where(log => !log.IsGone).OrderBy(log => log.Called, StringComparer.Ordinal)];

    /// <summary>Opens another one.</summary>
    public async Task OpenKeptAsync(string property)
    {
        await using var alone = await device.AloneAsync();
        unstored = await TurnToAsync(property);
        unstored ??= await RememberAsync(Kept?.BackedUp ?? 0);
    }

    /// <summary>What would be lost with one of them.</summary>
    public async Task<Outcome<AtStake>> AtStakeAsync(string property)
    {
        var read = await ReadKeptAsync(property);
        if (!read.Succeeded)
        {
            return read.Problem!;
        }

        var photos = PhotosIn(read.Value).DistinctBy(photo => photo.Hash).ToList();
        foreach (var other in KeptHere.Where(log => photos.Count > 0 && log.Property != property))
        {
            var elsewhere = await ReadKeptAsync(other.Property);
            if (!elsewhere.Succeeded)
            {
                return elsewhere.Problem!;
            }

            var hashes = PhotosIn(elsewhere.Value).Select(photo => photo.Hash).ToHashSet();
            photos.RemoveAll(photo => hashes.Contains(photo.Hash));
        }

        return new AtStake(NotesSince(read.Value, kept[property].BackedUp), photos);
    }

    /// <summary>Hands out one of them as a file that the command line tool reads.</summary>
    public async Task<Problem?> HandOutAsync(string property)
    {
        var read = await ReadKeptAsync(property);
        if (!read.Succeeded)
        {
            return read.Problem;
        }

        await device.HandOutAsync($"{FileName(property)}.jsonl", read.Value.ToBytes());
        kept[property] = kept[property] with { BackedUp = Math.Max(kept[property].BackedUp, WrittenIn(read.Value)) };
        return await device.RememberAsync(kept[property], isOpen: property == Document.Property);
    }

    /// <summary>Takes one off the device; where it is in hand, none is afterwards.</summary>
    public async Task<Problem?> RemoveAsync(string property)
    {
        await using var alone = await device.AloneAsync();
        var gone = kept[property] with { BackedUp = 0, Removed = kept[property].Removed + 1, IsGone = true };
        if (await device.RemoveAsync(gone) is { } trouble)
        {
            return trouble;
        }

        kept[property] = gone;
        if (property == Document.Property)
        {
            (Document, Source, last, unread) = (nothing, "", 0, null);
        }

        return null;
    }

    private async Task<Outcome<LogDocument>> ReadKeptAsync(string property)
    {
        var lines = await device.ReadAsync(property, 0);
        return lines.Succeeded ? LogDocument.Read(lines.Value.Bytes).InOrder() : lines.Problem!;
    }

    private static IEnumerable<PhotoFact> PhotosIn(LogDocument log) => log.Entries.Select(entry => entry.Fact).OfType<PhotoFact>();

    /// <summary>How many notes the entries of this device are that come after a number: a note, its taking back and its restoring are one.</summary>
    private long NotesSince(LogDocument log, long upTo)
    {
        var (by, lines) = (WriterOf(log.Property), Math.Max(0, WrittenIn(log) - upTo));
        var own = lines == 0 ? [] : log.Entries.Where(entry => entry.Id.Writer == by && entry.Id.Seq > upTo).ToList();

        // Of a long log only a glance may have been taken: what was not read of it is not counted as one.
        return own.Select(About).Distinct().Count() + lines - own.Count;
    }

    private static string About(Entry entry) => entry.Fact switch
    {
        StrikeFact taken => taken.Entry,
        RestoreFact back => back.Entry,
        _ => entry.Id.ToString(),
    };

    private long WrittenIn(LogDocument log) => log.LastHeader(WriterOf(log.Property))?.Id.Seq ?? 0;

    private string WriterOf(string? property) => property is not null && kept.GetValueOrDefault(property) is { Removed: > 0 } log ? $"{writer}r{log.Removed}" : writer;
}

/// <summary>What goes with a log that is taken off.</summary>
/// <param name="Notes">Those of this device that stand in no copy elsewhere.</param>
/// <param name="Photos">Those that no other log of this device has.</param>
public sealed record AtStake(long Notes, IReadOnlyList<PhotoFact> Photos);
