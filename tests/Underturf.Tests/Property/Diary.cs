using Underturf.FieldLog;
using Underturf.Property;

namespace Underturf.Tests.Property;

/// <summary>Notes of one invented writer, each with its own time of noting and, where wanted, an earlier time at which it was so.</summary>
internal sealed class Diary
{
    public static readonly DateTimeOffset Eight = new(2031, 4, 2, 8, 0, 0, TimeSpan.Zero);

    private readonly List<Entry> entries = [];

    /// <summary>Notes a fact this many minutes after eight o'clock, about the moment <paramref name="wasSoMinutes"/> after eight.</summary>
    public EntryId Note(int minutes, Fact fact, int? wasSoMinutes = null)
    {
        var noted = new HybridTime(Eight.AddMinutes(minutes).ToUnixTimeMilliseconds(), 0);
        var last = entries.Count == 0 ? null : entries[^1].Header;
        entries.Add(Pen.Seal("garden", "ann", last, noted, fact, Eight.AddMinutes(wasSoMinutes ?? minutes)).Value);
        return entries[^1].Id;
    }

    public LogDocument Log() => LogDocument.Read(ReadOnlyMemory<byte>.Empty).With(entries);

    public PropertyHistory Fold() => PropertyHistory.Fold(Log().Standing);
}
