using Underturf.Reasoning.Diagnosis;

namespace Underturf.Reasoning.Water;

/// <summary>Flows and pressures in the words of the page.</summary>
public static class FlowTelling
{
    public static FlowLines Of(FlowAnswer answer, bool usUnits)
    {
        var (say, piped) = (new WaterSay(usUnits), IsPiped(answer));
        var believed = (answer.Report?.Stations ?? []).ToDictionary(s => s.Station, StringComparer.Ordinal);
        return new FlowLines(
            Supply(answer, say),
            Idle(answer, say),
            [.. answer.Stations.Select(s => Line(s, believed.GetValueOrDefault(s.Station), say, piped))],
            answer.Unknown);
    }

    /// <summary>"67 ± 17 psi at rest, 5.6 ± 2.7 psi less with 13 gpm running; in order (90 %)".</summary>
    public static string Supply(FlowAnswer answer, WaterSay say)
    {
        var supply = answer.Supply;
        return $"{say.Pressure(supply.StaticPascals, supply.StaticSpreadPascals)} at rest, {say.Pressure(supply.LossPascals, supply.LossSpreadPascals)} less with {say.Flow(supply.LossAtCubicMetresPerSecond)} running; {supply.State} ({Say.Share(supply.Probability)})";
    }

    /// <summary>What runs with everything off, and what is lost by it.</summary>
    public static string Idle(FlowAnswer answer, WaterSay say) =>
        answer.Idle is null ? "nothing is known to run" : $"{answer.Idle}{(answer.Lost is { } lost ? $"; {lost.Say(say)}, nine times in ten" : string.Empty)}";

    /// <summary>Whether a pipe to any of the stations is noted.</summary>
    public static bool IsPiped(FlowAnswer answer) => answer.Stations.Any(s => s.Piping != StationPiping.Unknown);

    /// <summary>"4.9 ft/s in pipe p5", or that no pipe is known; nothing where none of the property is.</summary>
    public static string? Way(StationFlow station, WaterSay say, bool piped) =>
        station.FastestMetresPerSecond is { } speed ? $"{say.Speed(speed)}, {station.FastestPipe}"
        : station.Piping == StationPiping.Apart ? "pipe joined to nothing"
        : piped && station.Piping == StationPiping.Unknown ? "pipe not known"
        : null;

    /// <summary>"fast: may bang, 12 psi more".</summary>
    public static string? Bang(StationFlow station, WaterSay say) =>
        station.TooFast ? $"fast: may bang{(station.RisePascals is { } rise ? $", {say.Pressure(rise)} more" : string.Empty)}" : null;

    private static FlowLine Line(StationFlow station, StationBelief? believed, WaterSay say, bool piped) => new(
        station.Station,
        station.Number,
        string.Join(", ", station.Waters),
        $"{say.Flow(station.CubicMetresPerSecond, station.SpreadCubicMetresPerSecond)}, {say.Pressure(station.OutletPascals, station.OutletSpreadPascals)} at the outlets",
        station.ReadCubicMetresPerSecond is { } read ? say.Flow(read) : null,
        Way(station, say, piped),
        string.Join("; ", new[] { Bang(station, say), believed is { State: { } state, Probability: { } sure } ? $"{state} ({Say.Share(sure)})" : null }.OfType<string>()) is { Length: > 0 } remark ? remark : null);
}
