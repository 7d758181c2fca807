namespace Underturf.FieldLog;

/// <summary>
/// Where an entry stands in time: when it was so, then when it was noted, then its id. Notes of one breath have one time but an order, and
/// a reading taken before the repair is not one taken after it.
/// </summary>
public readonly record struct Moment(DateTimeOffset At, HybridTime Noted, EntryId Entry) : IComparable<Moment>
{
    /// <summary>After everything that was so up to and at a time.</summary>
    public static Moment EndOf(DateTimeOffset at) => new(at, new HybridTime(long.MaxValue, int.MaxValue), default);

    /// <summary>After everything.</summary>
    public static Moment Last { get; } = EndOf(DateTimeOffset.MaxValue);

    public static bool operator <(Moment a, Moment b) => a.CompareTo(b) < 0;

    public static bool operator >(Moment a, Moment b) => a.CompareTo(b) > 0;

    public static bool operator <=(Moment a, Moment b) => a.CompareTo(b) <= 0;

    public static bool operator >=(Moment a, Moment b) => a.CompareTo(b) >= 0;

    public int CompareTo(Moment other)
    {
        var byTime = At.CompareTo(other.At);
        var byNote = byTime != 0 ? byTime : Noted.CompareTo(other.Noted);
        return byNote != 0 ? byNote : Entry.CompareTo(other.Entry);
    }
}
