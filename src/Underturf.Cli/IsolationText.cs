using System.Globalization;
using System.Text;
using Underturf.Reasoning.Diagnosis;
using Underturf.Reasoning.Water;

namespace Underturf.Cli;

/// <summary>What to shut, as text for a terminal.</summary>
internal static class IsolationText
{
    public static string Write(IsolationAnswer answer, bool usUnits)
    {
        var text = new StringBuilder();
        text.AppendLine(string.Create(CultureInfo.InvariantCulture, $"TO WORK ON {answer.Place}: {answer.Minutes:0} min, {Say.Share(answer.Holds)} that it holds"));
        if (answer.Needed is { } needed)
        {
            text.AppendLine($"  ! cannot be shut off by itself: {char.ToLowerInvariant(needed[0])}{needed[1..]}");
        }

        foreach (var standing in answer.Stands)
        {
            text.AppendLine($"  {standing.Name} stands shut already: try it once more{Held(standing)}.");
        }

        foreach (var (number, step) in answer.Shut.Index())
        {
            text.AppendLine(string.Create(CultureInfo.InvariantCulture, $"  {number + 1}. shut {step.Name}: {step.WalkMinutes:0} min there, {step.TurnMinutes:0} min to turn{Held(step)}"));
        }

        text.AppendLine(answer.Dry.Count > 0 ? $"  Dry meanwhile: {answer.SayDry}." : answer.SayMayGoDry is null ? "  No station goes dry." : "  No station is known to go dry.");
        text.Append(answer.SayMayGoDry is { } may ? $"  May go dry too: {may}.{Environment.NewLine}" : string.Empty);
        foreach (var otherwise in answer.IfNot)
        {
            text.AppendLine($"  If {otherwise.Valve} does not hold: {string.Join(" and ", otherwise.Shut)}.");
        }

        List(text, "RELIEVE AND PROVE", answer.Relieve);
        if (answer.Hole is { } hole)
        {
            Hole(text, hole, new WaterSay(usUnits));
        }

        List(text, "FILL AGAIN", answer.Refill);
        text.Append(answer.Caution);
        return text.ToString();
    }

    /// <summary>What can be named.</summary>
    public static string Write(PlacesToDry places)
    {
        if (places.Places.Count == 0)
        {
            return "NO PLACE IS NOTED YET: note stations, valves, boxes or pipes first";
        }

        var text = new StringBuilder("PLACES THAT CAN BE NAMED").AppendLine();
        foreach (var kind in places.Places.GroupBy(p => p.Kind))
        {
            text.AppendLine($"  {string.Join(", ", kind.Select(p => p.Name))}");
        }

        return text.Append("Name one of them to hear what to shut: its name, its number or its id.").ToString();
    }

    private static string Held(ShutStep step) => step.Holds is { } holds ? $"; {Say.Share(holds)} that it holds, by the meter while it was shut" : string.Empty;

    private static string Minutes(HoleWay way) => way.MostMinutes - way.LeastMinutes < 1
        ? string.Create(CultureInfo.InvariantCulture, $"{way.MostMinutes:0} min")
        : string.Create(CultureInfo.InvariantCulture, $"{way.LeastMinutes:0} to {way.MostMinutes:0} min");

    private static void List(StringBuilder text, string head, IReadOnlyList<string> lines)
    {
        text.AppendLine(head);
        foreach (var line in lines)
        {
            text.AppendLine($"  - {line}");
        }
    }

    private static void Hole(StringBuilder text, HoleAnswer hole, WaterSay say)
    {
        text.AppendLine($"WATER IN THE HOLE, from {hole.From}");
        if (hole.Ways.Count > 0)
        {
            text.AppendLine($"  dry in {WaterSay.Time(hole.LeastSeconds)} to {WaterSay.Time(hole.MostSeconds)}{(hole.LeastCubicMetres is { } least ? $"; {say.Volume(least, hole.MostCubicMetres!.Value)} come" : string.Empty)}");
        }

        foreach (var way in hole.Ways)
        {
            text.AppendLine($"  - {way.Say}: {Minutes(way)} in all; only if {way.Condition}");
        }
    }
}
