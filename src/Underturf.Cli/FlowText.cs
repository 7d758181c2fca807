using System.Text;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Water;

namespace Underturf.Cli;

/// <summary>Flows and pressures as text for a terminal.</summary>
internal static class FlowText
{
    private static readonly string[] heads = ["station", "flow", "read", "at the supply", "at the outlets", "fastest", "remark"];

    public static string Write(FlowAnswer answer, bool usUnits)
    {
        var (text, say) = (new StringBuilder(), new WaterSay(usUnits));
        var supply = answer.Supply;
        text.AppendLine($"SUPPLY: {FlowTelling.Supply(answer, say)}");
        var within = (answer.Report?.Devices ?? []).Sum(d => d.Pascals) <= supply.LossPascals;
        foreach (var device in answer.Report?.Devices ?? [])
        {
            text.AppendLine($"  {(within ? "of that in the" : "more than that by what is noted of the")} {device.Say(say)}");
        }

        text.AppendLine($"EVERYTHING OFF: {FlowTelling.Idle(answer, say)}");
        text.AppendLine();
        text.AppendLine(answer.Together ? "TOGETHER" : "EACH ALONE");
        var piped = FlowTelling.IsPiped(answer);
        text.AppendLine(TextTable.Of(heads, answer.Stations.Select(s => Row(s, say, piped))));
        foreach (var station in answer.Stations.Where(s => s.Valves is not null))
        {
            text.AppendLine($"  station {station.Number}: reckoned with {station.Valves!.Say}, as the wires tell");
        }

        foreach (var station in answer.Stations.Where(s => s.Caught is not null))
        {
            text.AppendLine($"  cans on station {station.Number}: {station.Caught!.Say(say)}");
        }

        Report(text, answer.Report, say);
        foreach (var unknown in answer.Unknown)
        {
            text.AppendLine($"  ? {unknown}");
        }

        return text.ToString().TrimEnd();
    }

    /// <summary>What is believed of each station that was read or seen, and which valve shuts off what.</summary>
    private static void Report(StringBuilder text, WaterReport? report, WaterSay say)
    {
        var believed = report?.Stations.Where(s => s.State is not null).ToList() ?? [];
        if (believed.Count > 0)
        {
            text.AppendLine().AppendLine("WHAT IS BELIEVED");
            believed.ForEach(s => text.AppendLine($"  station {s.Number}: {s.State} ({Say.Share(s.Probability!.Value)})"));
        }

        if (report?.Drainage is { Count: > 0 } drainage)
        {
            text.AppendLine().AppendLine("ONCE A STATION SHUTS");
            foreach (var lateral in drainage)
            {
                text.AppendLine($"  station {lateral.Number}{(drainage.Count(d => d.Station == lateral.Station) > 1 ? $", {lateral.Valve}" : string.Empty)}: {lateral.Say(say)}");
                text.Append(lateral.Help(say) is { } help ? $"    helps: {help}{Environment.NewLine}" : string.Empty);
            }
        }

        if (report?.Shuts is { Count: > 0 } shuts)
        {
            text.AppendLine().AppendLine("WHAT SHUTS WHAT");
            foreach (var valve in shuts)
            {
                text.AppendLine($"  {valve.Name}: {(valve.ByPipes is null ? "nobody has noted what" : valve.Stations.Count == 0 ? "no station by itself" : $"station {string.Join(", ", valve.Stations)}{(valve.ByPipes == false ? " (told)" : string.Empty)}")}{(valve.StandsShut ? "; stands shut" : string.Empty)}{(valve.Holds is { } holds ? $"; {Say.Share(holds)} that it holds" : string.Empty)}");
            }
        }
    }

    private static string[] Row(StationFlow station, WaterSay say, bool piped) =>
    [
        station.Number,
        say.Flow(station.CubicMetresPerSecond, station.SpreadCubicMetresPerSecond),
        station.ReadCubicMetresPerSecond is { } read ? say.Flow(read) : string.Empty,
        say.Pressure(station.SupplyPascals),
        say.Pressure(station.OutletPascals, station.OutletSpreadPascals),
        FlowTelling.Way(station, say, piped) ?? string.Empty,
        FlowTelling.Bang(station, say) ?? string.Empty,
    ];
}
