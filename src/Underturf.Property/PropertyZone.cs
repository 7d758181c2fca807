using Underturf.Quantities;

namespace Underturf.Property;

/// <summary>
/// The clock that a property goes by: every moment that is told is told by it. Where no zone is noted, or none that the zone table has, a
/// moment keeps the offset that its writer gave.
/// </summary>
public sealed class PropertyZone
{
    private readonly TimeZoneInfo? clock;

    private PropertyZone(string? name) => (Name, clock) = (name, name is null ? null : Find(name));

    public static PropertyZone None { get; } = new(null);

    /// <summary>As noted.</summary>
    public string? Name { get; }

    public static PropertyZone Of(string? name) => name is null ? None : new(name);

    /// <summary>The same moment, by the clock of the property.</summary>
    public DateTimeOffset Told(DateTimeOffset moment) => clock is null ? moment : TimeZoneInfo.ConvertTime(moment, clock);

    /// <summary>What is wrong with a name that somebody notes.</summary>
    public static Problem? Doubt(string name, string place)
    {
        const string remedy = "Note the property again with area and city, for example America/Denver, or Etc/UTC";
        return !ZoneName.IsWellFormed(name) ? new Problem(place, $"is {Problem.Quote(name)}, which is no name of a time zone", remedy)
            : Find(name) is not null ? null
            : HasTable() ? new Problem(place, $"is {Problem.Quote(name)}, which the table of time zones does not have", remedy)
            : new Problem(place, $"is {Problem.Quote(name)}, and no table of time zones is on this machine: moments are told by the offsets they were noted with", "Install the package tzdata", Severity.Notice);
    }

    /// <summary>Names are looked up as files on some machines: only what is a name is asked for.</summary>
    private static TimeZoneInfo? Find(string name) =>
        ZoneName.IsWellFormed(name) && TimeZoneInfo.TryFindSystemTimeZoneById(name, out var found) ? found : null;

    /// <summary>Zones without summer time are in every table.</summary>
    private static bool HasTable() => Find("Etc/GMT+1") is not null;
}
