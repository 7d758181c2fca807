using Underturf.Property.Practice;

namespace Underturf.Planning.Day.Interim;

/// <summary>Reads from the effects of a fault what it does to a station that is run, and never its id.</summary>
internal static class FaultEffects
{
    public static IEnumerable<RunEffect> Of(FaultPractice fault)
    {
        (bool Has, RunEffect Effect)[] all =
        [
            (fault.ToCommonOhms is not null || fault.CoilFactor is not null, RunEffect.ShortCircuit),
            (fault.EarthOhms is not null, RunEffect.EarthLeak),
            (fault.OtherCommon, RunEffect.OtherCommon),
            (fault.SeriesOhms is not null || fault.SeriesCoils is not null, RunEffect.AddedOhms),
            (fault.SourceOhms is not null, RunEffect.WeakSupply),
            (fault.Open, RunEffect.Open),
            (fault.Joins || fault.MoreCoils is not null || fault.ExtraPlaces, RunEffect.MorePlaces),
            (fault.Scope == FaultScope.Unmodelled, RunEffect.Unmodelled),
        ];
        return all.Where(e => e.Has).Select(e => e.Effect);
    }

    public static IEnumerable<RunEffect> Of(WaterFault fault)
    {
        (bool Has, RunEffect Effect)[] all =
        [
            (fault.AddsLitresPerMinute is not null, RunEffect.Spills),
            (fault.Scope == WaterScope.Valve && fault.LeaksLitresPerMinute is not null, RunEffect.RunsOn),
        ];
        return all.Where(e => e.Has).Select(e => e.Effect);
    }

    /// <summary>Chance that a station with it waters nothing, beside what its effects say.</summary>
    public static double Dry(FaultPractice fault) => fault.StaysShut;

    /// <summary>The share of its water that does not come.</summary>
    public static double Dry(WaterFault fault) => fault.FlowFactor is { } factor && fault.AddsLitresPerMinute is null ? Math.Max(0, 1 - factor.Median) : 0;
}
