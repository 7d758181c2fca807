using Underturf.FieldLog;

namespace Underturf.Simulation;

/// <summary>Seals notes one after the other for several writers of one property.</summary>
public sealed class LogKeeper(string property)
{
    private readonly List<Entry> entries = [];
    private readonly Dictionary<string, Header> last = new(StringComparer.Ordinal);
    private HybridTime clock;

    /// <summary>Goes on where a log ends.</summary>
    public static LogKeeper After(LogDocument log)
    {
        var keeper = new LogKeeper(log.Property ?? throw new ArgumentException("The log is of no property.", nameof(log)));
        keeper.entries.AddRange(log.Entries);
        foreach (var writer in log.Entries.Select(e => e.Id.Writer).Distinct())
        {
            keeper.last[writer] = log.LastHeader(writer)!;
        }

        keeper.clock = log.LastNoted ?? default;
        return keeper;
    }

    /// <summary>Notes a fact at a moment, which is also when it was so.</summary>
    public EntryId Note(string writer, DateTimeOffset moment, Fact fact)
    {
        clock = HybridTime.Next(clock, moment.ToUnixTimeMilliseconds());
        var sealedEntry = Pen.Seal(property, writer, last.GetValueOrDefault(writer), clock, fact, moment);
        if (!sealedEntry.Succeeded)
        {
            throw new InvalidOperationException(sealedEntry.Problem!.ToString());
        }

        entries.Add(sealedEntry.Value);
        last[writer] = sealedEntry.Value.Header;
        return sealedEntry.Value.Id;
    }

    public LogDocument Log() => LogDocument.Read(ReadOnlyMemory<byte>.Empty).With(entries);
}
