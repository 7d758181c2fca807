using Underturf.FieldLog;

namespace Underturf.Property;

/// <summary>The clock of a property: a day there goes by it, wherever the device stands that asks.</summary>
public static class PropertyClock
{
    /// <summary>The same moment as the property's clock shows it; by the clock that it came with, where no zone is noted or this machine does not know it.</summary>
    public static DateTimeOffset At(PropertyFact? property, DateTimeOffset moment) =>
        property?.Zone is { } zone && ZoneName.IsWellFormed(zone) && TimeZoneInfo.TryFindSystemTimeZoneById(zone, out var there) ? TimeZoneInfo.ConvertTime(moment, there) : moment;
}
