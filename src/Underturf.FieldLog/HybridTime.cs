using System.Globalization;

namespace Underturf.FieldLog;

/// <summary>
/// Hybrid logical time: wall-clock milliseconds with a counter that keeps the order of notes made within one tick
/// or under a clock that went back.
/// </summary>
public readonly record struct HybridTime(long UnixMilliseconds, int Counter) : IComparable<HybridTime>
{
    private const string Form = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    /// <summary>0001-01-01 and 9999-12-31 in Unix milliseconds: what the text form can hold.</summary>
    private const long Earliest = -62135596800000, Latest = 253402300799999;

    /// <summary>True where the moment can be written: years 1 to 9999, counter not negative.</summary>
    public bool IsWritable => UnixMilliseconds is >= Earliest and <= Latest && Counter >= 0;

    /// <summary>The wall-clock part. Only for a writable time.</summary>
    public DateTimeOffset Moment => DateTimeOffset.FromUnixTimeMilliseconds(UnixMilliseconds);

    /// <summary>
    /// The first time after <paramref name="last"/> that is not before the wall clock, so that order survives a clock set back.
    /// </summary>
    public static HybridTime Next(HybridTime last, long wallMilliseconds)
    {
        if (wallMilliseconds > last.UnixMilliseconds)
        {
            return new HybridTime(wallMilliseconds, 0);
        }

        return last.Counter < int.MaxValue ? last with { Counter = last.Counter + 1 } : new HybridTime(last.UnixMilliseconds + 1, 0);
    }

    /// <summary>Reads "2031-04-02T15:12:00.000Z/0"; exactly that form, so that one time has one text.</summary>
    public static bool TryParse(string text, out HybridTime time)
    {
        time = default;
        var slash = text.IndexOf('/');
        if (slash < 0
            || !DateTimeOffset.TryParseExact(
                text.AsSpan(0, slash),
                Form,
                CultureInfo.InvariantCulture,
                DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal,
                out var moment)
            || !int.TryParse(text.AsSpan(slash + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var counter))
        {
            return false;
        }

        time = new HybridTime(moment.ToUnixTimeMilliseconds(), counter);
        return time.ToString() == text;
    }

    public int CompareTo(HybridTime other) =>
        UnixMilliseconds != other.UnixMilliseconds ? UnixMilliseconds.CompareTo(other.UnixMilliseconds) : Counter.CompareTo(other.Counter);

    public override string ToString() => IsWritable
        ? string.Create(CultureInfo.InvariantCulture, $"{Moment.ToString(Form, CultureInfo.InvariantCulture)}/{Counter}")
        : string.Create(CultureInfo.InvariantCulture, $"{UnixMilliseconds} ms/{Counter}");
}
