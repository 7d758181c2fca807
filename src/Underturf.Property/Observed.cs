using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>A fact with where it stands in time.</summary>
public sealed record Observed<T>(T Fact, Moment Moment)
    where T : Fact
{
    public DateTimeOffset At => Moment.At;

    /// <summary>The entry that says it.</summary>
    public EntryId Entry => Moment.Entry;
}
