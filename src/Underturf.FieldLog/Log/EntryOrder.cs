namespace Underturf.FieldLog;

/// <summary>
/// The one order of entries: time of noting, then writer, then number. What is still equal (the sides of a fork) is told apart
/// by property and bytes, so that every copy of a log has the same order.
/// </summary>
internal sealed class EntryOrder : IComparer<Entry>
{
    public static EntryOrder Instance { get; } = new();

    public int Compare(Entry? x, Entry? y)
    {
        if (x is null || y is null)
        {
            return (x is null ? 0 : 1) - (y is null ? 0 : 1);
        }

        var order = x.Header.Noted.CompareTo(y.Header.Noted);
        order = order != 0 ? order : x.Id.CompareTo(y.Id);
        order = order != 0 ? order : string.CompareOrdinal(x.Header.Property, y.Header.Property);
        return order != 0 ? order : x.Line.Span.SequenceCompareTo(y.Line.Span);
    }
}
