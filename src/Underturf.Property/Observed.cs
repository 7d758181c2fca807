using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>A fact with when it was so and the entry that says it.</summary>
public sealed record Observed<T>(T Fact, DateTimeOffset At, EntryId Entry)
    where T : Fact;
